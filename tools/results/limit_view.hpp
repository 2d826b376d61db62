#pragma once

#include <string>
#include <vector>

#include "tools/present/figure.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/limits.hpp"

/// How limits are said, drawn and written, the same in every tool.
namespace stillground::results {

/// "2046-01-12 07:00", or "2046-01" for a limit on monthly means; "kept" if it never was.
std::string first_beyond_text(const LimitOutcome& outcome, const Date& start);

/// One row a limit: value, kept or not, how near it came, when it was first left and how often in the named run-years.
present::Table limit_table(const std::vector<LimitOutcome>& outcomes, const Date& start);

/// [{"name": "eft_min", "value": -2, "units": "degC", "kept": true, ...}]
present::Json limit_json(const std::vector<LimitOutcome>& outcomes, const Date& start);

/// Lines for the limits on the EFT. The range is widened to hold those near the data; the others get an arrow at the
/// panel's edge, so that a far limit does not flatten the curves.
std::vector<present::Level> limit_levels(const std::vector<LimitOutcome>& outcomes, present::Range& range);

}  // namespace stillground::results
