#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/program/notices.hpp"
#include "engine/record/read/result.hpp"
#include "tools/results/drift.hpp"
#include "tools/results/eft.hpp"

namespace stillground::results {

/// What one layout costs and how it does.
struct Layout {
  std::string name;  ///< short and unlike the others': the file's name without its end
  std::string file;
  std::string title;
  std::string method;
  program::Notices notices;
  int years = 0;
  Date start;
  long bores = 0;
  double least_depth = 0;        ///< of the bores, active length [m]
  double most_depth = 0;         ///< [m]
  std::vector<double> phases;    ///< when later bores begin to work, since the start [s]
  double drill_length = 0;       ///< [m]
  double spacing = 0;            ///< between the two nearest bores [m]; NaN for a lone bore
  double land_area = 0;          ///< of the ground block on the plan [m2]
  std::vector<YearFluid> fluid;  ///< all run-years
  EnergySummary energy;
  std::vector<LimitOutcome> limits;
  std::vector<record::MinuteExtremes> minutes;  ///< all run-years; none where there is no estimate
  long hours_beyond = 0;                        ///< hours beyond at least one of the limits on hours
  long months_beyond = 0;                       ///< months beyond at least one of the limits on monthly means
  long minute_years_beyond = 0;                 ///< run-years beyond at least one of the limits on minutes
  std::optional<Drift> drift;                   ///< none if the run recorded no fields
};

Layout layout_of(const record::read::Result& result);

/// Names for a row of files: their stems; where two are equal, their folder's name before it; where that does not part
/// them either, a number behind it.
std::vector<std::string> short_names(const std::vector<std::string>& files);

}  // namespace stillground::results
