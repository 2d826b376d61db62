#pragma once

#include <optional>
#include <span>
#include <vector>

namespace stillground::results {

inline constexpr int trend_years = 10;       ///< yearly means that a trend takes, where there are so many
inline constexpr double level_slope = 0.05;  ///< a trend below this is level [K per decade]

/// Least-squares slope of yearly means, per decade; NaN for fewer than two.
double slope_per_decade(std::span<const double> yearly);

/// For each run-year the slope of its own and the nine means before it, or as many as there are [per decade]; NaN in
/// the first one, which has no trend.
std::vector<double> trends(std::span<const double> yearly);

/// The first run-year (from 1) whose trend is level and stays so to the end; none if the last one is not level. A trend
/// that only passes through zero, where a field turns from warming to cooling, is not levelling off.
std::optional<int> level_from(std::span<const double> trends);

}  // namespace stillground::results
