#include <fmt/format.h>

#include <cmath>

#include "engine/units/display.hpp"
#include "tools/results/drift.hpp"
#include "tools/results/trend.hpp"

namespace stillground::results {

namespace {

std::string standing(double rise, UnitSystem system) {
  if (std::abs(rise) < 0.005) return "stands where it was without the field";
  return fmt::format("stands {} {} it was without the field", units::text(std::abs(rise), "K", 2, system),
                     rise > 0 ? "above what" : "below what");
}

/// What the last year's heat would make of it in the end.
std::string ending(const Drift& drift, UnitSystem system) {
  const double end = drift.yearly.final_block;
  if (std::isnan(drift.share)) return "the last year's heat, kept up for ever, would leave it where it was";
  const std::string change = fmt::format("the {} of {} that the last year's heat would bring in the end",
                                         units::text(std::abs(end), "K", 2, system), end > 0 ? "warming" : "cooling");
  if (drift.share < 0) return "against " + change;
  return fmt::format("{:.0f} % of {}", 100 * drift.share, change);
}

}  // namespace

std::string verdict(const Drift& drift, UnitSystem system) {
  const int years = static_cast<int>(drift.yearly.block_rise.size());
  const std::string state = standing(drift.yearly.block_rise.back(), system);
  const std::string end = ending(drift, system);
  if (years < 2) return fmt::format("One run-year shows no trend: on its mean the ground block {}, {}.", state, end);
  if (drift.level_from) {
    return fmt::format(
        "The ground block is level from run-year {} on (trend now {} per decade, under {} per decade): in run-year {} "
        "it {}, {}.",
        *drift.level_from, units::text(drift.trend, "K", 3, system), units::text(level_slope, "K", 2, system), years,
        state, end);
  }
  return fmt::format(
      "The ground block {} by {} per decade and does not level off within the {} years: in the last one it {}, "
      "{}.",
      drift.trend > 0 ? "warms" : "cools", units::text(std::abs(drift.trend), "K", 2, system), years, state, end);
}

}  // namespace stillground::results
