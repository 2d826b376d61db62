#pragma once

#include <optional>
#include <vector>

#include "tools/sweep/state.hpp"

namespace stillground::sweep {

/// In the plan's currency; nothing without prices.
std::optional<double> cost_of(const Plan& plan, const Record& record);

/// Numbers of the points, best first: those that keep their limits by what the plan ranks by, equal ones by their
/// margin; then those that do not, nearest first; failed ones and those without a record last, in their order.
std::vector<std::size_t> ranked(const Plan& plan, const State& state);

/// Numbers of the points that none beats: none has as much margin for less of cost or length, nor more margin for as
/// much. By rising margin.
std::vector<std::size_t> unbeaten(const Plan& plan, const State& state);

/// What a trade-off weighs against the margin: the cost if there are prices, else the length [m]; NaN of a failed one.
double spent(const Plan& plan, const Record& record);

}  // namespace stillground::sweep
