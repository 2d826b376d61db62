#include <fmt/format.h>

#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>

#include "engine/base/temperature.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"
#include "validation/undisturbed/claims.hpp"
#include "validation/undisturbed/ground_log.hpp"

namespace stillground::validation {

namespace {

constexpr double yearly = 2 * std::numbers::pi / seconds_per_year;
constexpr double endless = std::numeric_limits<double>::infinity();

/// Kusuda & Achenbach's expression [K] behind a film that damps the air's swing by `damping` and delays it by `lag`.
double wave(const model::SeasonalSurface& s, double depth_of_decay, double z, double time, double damping, double lag) {
  const double x = z / depth_of_decay;
  return s.mean - s.swing * damping * std::exp(-x) * std::cos(yearly * (time - s.coldest) - x - lag);
}

/// The days on which columns are compared.
constexpr std::array<double, 4> days{25, 116, 207.25, 300};

void points(Check& check) {
  auto& claim =
      check.claim({"wave-points", "the yearly wave sinks into even ground as Kusuda and Achenbach say",
                   Origin::computed, "Kusuda & Achenbach 1965, NBS report 8972; tests/reference/undisturbed_column.csv",
                   "temperature [degC] at 0 to 20 m on four days, three grounds and surfaces, from the closed "
                   "form that the engine evaluates",
                   "1e-9 K, as the reference's README asks of the formula (10 decimals are printed)"});
  std::map<double, WorstCase> of_depth;
  for (const auto& row : reference_solutions::reference_table("undisturbed_column.csv")) {
    const double alpha = std::stod(row.at("diffusivity")) / seconds_per_day, depth = std::stod(row.at("depth"));
    const std::vector<model::Layer> layers{{endless, "", {2e6 * alpha, 2e6}}};
    const auto amplitude = ground::wave_amplitude(layers, yearly, std::vector<double>{depth});
    const double since = (std::stod(row.at("day")) - std::stod(row.at("coldest_day"))) * seconds_per_day;
    const double ours = std::stod(row.at("surface_mean")) -
                        std::stod(row.at("surface_swing")) * (amplitude[0] * std::polar(1.0, yearly * since)).real();
    of_depth[depth].compare_absolute("day " + row.at("day"), std::stod(row.at("temperature")), ours);
  }
  for (const auto& [depth, worst] : of_depth) worst.row(claim, fmt::format("{:g} m", depth), 1e-9);
}

/// The engine's own cells, with and without a film.
void cells(Check& check) {
  auto& claim = check.claim(
      {"wave-cells", "the march's undisturbed column is that wave, averaged over each cell", Origin::computed,
       "Kusuda & Achenbach 1965; film: a wave's surface temperature is h/(h + k (1 + i)/d) of the air's, Carslaw & "
       "Jaeger 1959, 2.8 [section from memory]",
       "temperature [K] of the engine's cells for a bore from 2 to 102 m on four days of the second year; k 1.8 W/(m "
       "K), rho c 2.3 MJ/(m3 K), swing 9 K; no film, and one of 8 W/(m2 K). Reference: the expression's mean over each "
       "cell, midpoint rule of 2000 parts",
       "1e-4 K: the midpoint rule errs by less, and the engine's means are exact"});
  const model::Solid soil{1.8, 2.3e6};
  const std::vector<model::Layer> layers{{endless, "", soil}};
  const auto grid = ground::make_grid({0.075, 300, 46, 0.5, 1.2, 8, 100}, layers, {{2, 102}});
  const double decay = std::sqrt(2 * soil.diffusivity() / yearly);
  for (const double film : {0.0, 8.0}) {
    const model::SeasonalSurface surface{283.5, 9, 25 * seconds_per_day, 0, film, 0};
    const double b = film > 0 ? soil.conductivity / (film * decay) : 0;
    const double damping = 1 / std::hypot(1 + b, b), lag = std::atan2(b, 1 + b);
    const ground::Undisturbed undisturbed({layers, surface}, grid, 0, 2 * seconds_per_year);
    for (const double day : days) {
      const double time = seconds_per_year + day * seconds_per_day;
      const auto ours = column_at(undisturbed, grid, time);
      WorstCase worst;
      for (std::size_t k = 0; k < grid.nz(); ++k) {
        double sum = 0;
        constexpr int parts = 2000;
        for (int i = 0; i < parts; ++i)
          sum += wave(surface, decay, grid.z_faces[k] + (i + 0.5) / parts * grid.height(k), time, damping, lag);
        worst.compare_absolute(fmt::format("{:.1f} m", grid.z[k]), sum / parts, ours[k]);
      }
      worst.row(claim, fmt::format("{}, day {:g}", film > 0 ? "film" : "no film", day), 1e-4);
    }
  }
}

void layered(Check& check) {
  const std::string source =
      "periodic heat flow in slabs, Carslaw & Jaeger 1959, 3.7 [section from memory]; "
      "tests/reference/undisturbed_layers.csv";
  auto& formula = check.claim({"wave-layers", "through layers the wave is damped and delayed as slabs say",
                               Origin::computed, source, "amplitude of a unit wave, its delay in days; two grounds",
                               "2e-10 and 1e-7 days: the reference's printed decimals"});
  auto& columns = check.claim(
      {"wave-layers-column", "the undisturbed column follows the wave through layers", Origin::computed, source,
       "temperature [degC] on day 207, mean 10 degC, swing 8 K, at the faces of cells of 1 cm: where both cells' half "
       "conductances meet",
       "0.001 K, 0.01 % of the swing: the wave bends within such a cell by less"});
  std::map<std::string, WorstCase> amplitude, delay, column;
  std::map<std::string, Traces> traces;
  for (const auto& row : reference_solutions::reference_table("undisturbed_layers.csv")) {
    const auto layers = layers_from(row.at("layers"));
    const std::string name = row.at("name"), where = row.at("depth") + " m";
    const double depth = std::stod(row.at("depth"));
    const auto ours = ground::wave_amplitude(layers, yearly, std::vector<double>{depth})[0];
    double days_late = -std::arg(ours) / yearly / seconds_per_day;
    if (days_late < -1e-6) days_late += days_per_year;
    amplitude[name].compare_absolute(where, std::stod(row.at("amplitude")), std::abs(ours));
    delay[name].compare_absolute(where, std::stod(row.at("delay_days")), days_late);
    if (depth == 0) continue;
    const auto grid = even_column(layers, 20, 0.01);
    const model::SeasonalSurface surface{283.15, 8, 25 * seconds_per_day, 0, 0, 0};
    const auto t =
        column_at(ground::Undisturbed({layers, surface}, grid, 0, seconds_per_year), grid, 207 * seconds_per_day);
    const auto k = static_cast<std::size_t>(std::lround(depth / 0.01));
    const double upper = grid.solid[k - 1].conductivity, lower = grid.solid[k].conductivity;
    const double at_face = (upper * t[k - 1] + lower * t[k]) / (upper + lower) - zero_celsius;
    column[name].compare_absolute(where, std::stod(row.at("example_day207")), at_face);
    traces[name].add(name, depth, std::stod(row.at("example_day207")), at_face);
  }
  for (const auto& [name, worst] : amplitude) worst.row(formula, name + ", amplitude", 2e-10);
  for (const auto& [name, worst] : delay) worst.row(formula, name + ", delay", 1e-7);
  for (const auto& [name, worst] : column) worst.row(columns, name, 1e-3);
  for (const auto& [name, trace] : traces)
    columns.plot(trace.on({"Day 207, " + name, "depth [m]", "temperature [degC]", false, false, {}}));
}

}  // namespace

void yearly_wave(Check& check) {
  points(check);
  cells(check);
  layered(check);
}

}  // namespace stillground::validation
