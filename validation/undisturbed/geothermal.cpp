#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "validation/harness/worst_case.hpp"
#include "validation/undisturbed/claims.hpp"
#include "validation/undisturbed/ground_log.hpp"

namespace stillground::validation {

namespace {

constexpr double heat_flow = 0.065;  // [W/m2], upwards

/// Three layers, k 1, 2.2 and 3 W/(m K).
std::vector<model::Layer> site() {
  return layers_from("2:1:2.8e+06;12:2.2:2.1e+06;end:3:2.2e+06");
}

void profile(Check& check) {
  auto& claim = check.claim(
      {"geothermal-profile", "over the year the ground warms with depth as its heat flow asks", Origin::computed,
       "Fourier's law in series: T = surface mean + q/h + q z/k layer by layer",
       fmt::format(
           "mean of 365 days, cell by cell, over the surface's mean [K]; q {} W/m2, three layers, a 9 K wave; no "
           "film, and one of 5 W/(m2 K); the engine's own cells for a bore from 2 to 102 m",
           heat_flow),
       "1e-9 K: the sum of a wave over its period is zero, the rest is linear within a cell"});
  const auto layers = site();
  const auto grid = ground::make_grid({0.075, 300, 46, 0.5, 1.2, 8, 100}, layers, {{2, 102}});
  for (const double film : {0.0, 5.0}) {
    const model::SeasonalSurface surface{283.5, 9, 25 * seconds_per_day, heat_flow, film, 0};
    const ground::Undisturbed undisturbed({layers, surface}, grid, 0, seconds_per_year);
    std::vector<double> mean(grid.nz());
    for (int day = 0; day < 365; ++day) {
      const auto now = column_at(undisturbed, grid, day * seconds_per_day);
      for (std::size_t k = 0; k < grid.nz(); ++k) mean[k] += now[k] / 365;
    }
    WorstCase worst[3];
    for (std::size_t k = 0; k < grid.nz(); ++k) {
      const double z = grid.z[k];
      const double expected =
          (film > 0 ? heat_flow / film : 0) +
          heat_flow * (std::min(z, 2.0) / 1 + std::clamp(z - 2, 0.0, 10.0) / 2.2 + std::max(z - 12, 0.0) / 3);
      worst[z < 2 ? 0 : z < 12 ? 1 : 2].compare_absolute(fmt::format("{:.1f} m", z), expected, mean[k] - surface.mean);
    }
    const char* const names[] = {"0 to 2 m", "2 to 12 m", "12 m and below"};
    for (int layer = 0; layer < 3; ++layer)
      worst[layer].row(claim, fmt::format("{}, {}", film > 0 ? "film" : "no film", names[layer]), 1e-9);
  }
}

/// Heat [W/m2] that leaves through the surface: slope there of the parabola through its own temperature and the means
/// of the two cells below.
double surface_heat(const ground::Grid& grid, const std::vector<double>& t, double at_surface) {
  return grid.solid[0].conductivity * (-6 * at_surface + 7 * t[0] - t[1]) / (2 * grid.height(0));
}

double stored(const ground::Grid& grid, const std::vector<double>& t) {
  double sum = 0;
  for (std::size_t k = 0; k < grid.nz(); ++k) sum += grid.solid[k].heat_capacity * grid.height(k) * t[k];
  return sum;
}

void balance(Check& check) {
  const std::string setup = fmt::format(
      "cells of 2 cm down to 60 m, three layers, q {} W/m2, a 9 K wave; heat through the surface from the "
      "slope of the two uppermost cells every six hours, summed by the trapezoidal rule",
      heat_flow);
  const std::string error = "the slope's error on 2 cm cells is of the order of (0.02 m/2 m)^2";
  auto& through_surface =
      check.claim({"geothermal-surface", "in a year as much heat leaves through the surface as comes up from below",
                   Origin::computed, "conservation of energy over a whole period: the heat flow that was given", setup,
                   "0.1 % of q for the year's mean: " + error});
  auto& course = check.claim(
      {"geothermal-balance", "what the undisturbed ground stores is what came up less what left through its surface",
       Origin::engine, "the column's own stored heat against its own slope at the surface, by conservation of energy",
       setup, "0.1 % of the yearly swing of the stored heat: " + error});
  const auto layers = site();
  const auto grid = even_column(layers, 60, 0.02);
  const model::SeasonalSurface surface{283.5, 9, 25 * seconds_per_day, heat_flow, 0, 0};
  const ground::Undisturbed undisturbed({layers, surface}, grid, 0, seconds_per_year);
  constexpr int samples = 1460;
  constexpr double interval = seconds_per_year / samples;
  double out = 0, before = 0, at_start = 0, least = 0, most = 0, largest = 0;
  for (int i = 0; i <= samples; ++i) {
    const double time = i * interval;
    const auto t = column_at(undisturbed, grid, time);
    const double now = surface_heat(
        grid, t,
        surface.mean - surface.swing * std::cos(2 * std::numbers::pi * (time - surface.coldest) / seconds_per_year));
    if (i == 0) at_start = stored(grid, t);
    if (i > 0) out += (before + now) / 2 * interval;
    before = now;
    const double gained = stored(grid, t) - at_start;
    least = std::min(least, gained);
    most = std::max(most, gained);
    largest = std::max(largest, std::abs(gained - (heat_flow * time - out)));
  }
  through_surface.relative("mean heat through the surface [W/m2]", heat_flow, out / seconds_per_year, 1e-3);
  course.absolute("largest gap of the balance over the swing of the stored heat", 0, largest / (most - least), 1e-3);
}

}  // namespace

void geothermal_heat(Check& check) {
  profile(check);
  balance(check);
}

}  // namespace stillground::validation
