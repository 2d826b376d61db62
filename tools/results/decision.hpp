#pragma once

#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/read/result.hpp"
#include "tools/results/limits.hpp"

namespace stillground::results {

inline constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

/// What one run decided, by march or by screening, for those who choose among many. All figures are those of `eft`,
/// `drift` and `compare`; NaN or nothing where there is none.
struct Decision {
  double eft_min = unknown;              ///< of all hours with flow [K]
  double eft_max = unknown;              ///< [K]
  double margin = unknown;               ///< to the nearest limit, by what that one judges; negative beyond it [K]
  std::string limit;                     ///< its name: "eft_min"; empty without limits
  std::optional<int> first_year_beyond;  ///< run-year in which any limit was first left
  std::optional<long> hours_beyond;      ///< beyond at least one limit on hours; none without such a limit
  double drift = unknown;                ///< the ground block's trend [K per decade]; a screening has no ground
  double length = 0;                     ///< to drill [m]
  double power = unknown;                ///< electricity of the heat pumps, yearly mean [J]
  double performance = unknown;          ///< heat that the building takes and gives off over that electricity
  std::string method;                    ///< "march" or "screening"
  std::vector<std::string> warnings;
  record::ScreeningError own_error;  ///< of a screening; none of a march
  std::vector<LimitOutcome> limits;  ///< how each fared
};

/// Of a run's hours. `header`: with all warnings, as it is read back from a result. `drift`: as drift_of has it.
Decision decision_of(const record::Header& header, std::span<const record::Hour> hours,
                     std::span<const record::MinuteExtremes> minutes = {}, double drift = unknown);

/// Of a finished result file, with its drift where it holds fields.
Decision decision_of(const record::read::Result& result);

/// Whether every limit that could be judged was kept.
bool kept(const Decision& decision);

/// How far its own error may move what a limit judges [K]: that of a month's mean or of an hour; 0 of a march.
double error_at(const Decision& decision, const LimitOutcome& outcome);

/// Whether kept() stays what it is anywhere within the decision's own error.
bool is_sure(const Decision& decision);

}  // namespace stillground::results
