#pragma once

#include <string>
#include <vector>

#include "tools/present/figure.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/fluid.hpp"
#include "tools/results/limits.hpp"
#include "tools/results/temperature_scale.hpp"

/// How limits are said, drawn and written, the same in every tool.
namespace stillground::results {

/// "2046-01-12 07:00-08:00", or "2046-01" for a limit on monthly means; "kept" if it never was.
std::string first_beyond_text(const LimitOutcome& outcome, const Date& start);

/// In what a limit's periods are counted: "h", "months", "years".
std::string counted_in(const LimitOutcome& outcome);

/// One row a limit: value, kept or not, how near it came, when it was first left and how often in the named run-years.
present::Table limit_table(const std::vector<LimitOutcome>& outcomes, const Date& start);

/// [{"name": "eft_min", "value": -2, "units": "degC", "kept": true, ...}]
present::Json limit_json(const std::vector<LimitOutcome>& outcomes, const Date& start);

/// "2046-01-12", or "2046-01" for a limit on monthly means: the day on which a broken limit was first left.
std::string first_beyond_day(const LimitOutcome& outcome, const Date& start);

/// Which limit was left first and when, or that all were kept, in one sentence.
std::string first_broken_text(const std::vector<LimitOutcome>& outcomes, const Date& start,
                              const TemperatureScale& scale);

/// "EFT", "LFT", "mean fluid temperature".
std::string name_of(Quantity quantity);

/// Lines for the limits on one quantity. The range, in figures of the scale, is widened to hold those near the data;
/// the others get an arrow at the panel's edge, so that a far limit does not flatten the curves.
std::vector<present::Level> limit_levels(const std::vector<LimitOutcome>& outcomes, Quantity quantity,
                                         const TemperatureScale& scale, present::Range& range);

}  // namespace stillground::results
