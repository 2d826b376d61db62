#pragma once

#include <optional>
#include <span>
#include <string>

#include "engine/record/frames.hpp"
#include "tools/present/json.hpp"
#include "tools/results/temperature_scale.hpp"

/// What minutes within the hours bring, as the run has estimated it.
namespace stillground::results {

struct Minute {
  double eft = 0;  ///< [K]
  long hour = 0;   ///< of the run
};

/// The least, or the greatest, of all run-years; none where there is no estimate or no flow.
std::optional<Minute> farthest_minute(std::span<const record::MinuteExtremes> years, bool least);

/// "In any minute: EFT about -2.3 degC at the least (2047-02-11 07:00-08:00), ...", or that it was not estimated.
std::string minute_text(std::span<const record::MinuteExtremes> years, const Date& start, UnitSystem units);

/// {"least": {"value": ..., "units": "degC", "hour": ...}, "most": ...}; null where there is no estimate.
present::Json minute_json(std::span<const record::MinuteExtremes> years, const Date& start);

}  // namespace stillground::results
