#include "engine/ground/undisturbed.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "engine/base/calendar.hpp"
#include "tests/catch.hpp"
#include "validation/harness/ground_log.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;
using validation::layers_from;

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();
constexpr double yearly = 2 * std::numbers::pi / seconds_per_year;

/// Thin cells so that a cell's mean is the temperature at its middle to 1e-6 K.
ground::Grid thin_grid(const std::vector<model::Layer>& layers, double depth) {
  ground::Grid grid;
  const int cells = static_cast<int>(std::lround(depth / 0.01));
  grid.z_faces.push_back(0);
  for (int k = 0; k < cells; ++k) {
    grid.z_faces.push_back((k + 1) * 0.01);
    grid.z.push_back((k + 0.5) * 0.01);
    std::size_t l = 0;
    while (grid.z.back() > layers[l].bottom) ++l;
    grid.solid.push_back(layers[l].solid);
  }
  return grid;
}

}  // namespace

// Kusuda & Achenbach 1965; tests/reference/undisturbed_column.csv.
TEST_CASE("The yearly wave in homogeneous ground is that of Kusuda and Achenbach") {
  for (const auto& row : reference_solutions::reference_table("undisturbed_column.csv")) {
    const double alpha = std::stod(row.at("diffusivity")) / seconds_per_day;
    const std::vector<model::Layer> layers{{endless, "", {2e6 * alpha, 2e6}}};
    const double depth = std::stod(row.at("depth"));
    const auto wave = ground::wave_amplitude(layers, yearly, std::vector<double>{depth});
    const double since_coldest = (std::stod(row.at("day")) - std::stod(row.at("coldest_day"))) * seconds_per_day;
    const double ours = std::stod(row.at("surface_mean")) -
                        std::stod(row.at("surface_swing")) *
                            (wave[0] * std::exp(std::complex<double>(0, yearly * since_coldest))).real();
    CHECK(ours == Approx(std::stod(row.at("temperature"))).margin(1e-9));
  }
}

// Periodic heat flow in slabs, Carslaw & Jaeger 1959; tests/reference/undisturbed_layers.csv (10 decimals).
TEST_CASE("The yearly wave through layers has the amplitude and the delay of the slab solution") {
  for (const auto& row : reference_solutions::reference_table("undisturbed_layers.csv")) {
    const auto wave =
        ground::wave_amplitude(layers_from(row.at("layers")), yearly, std::vector<double>{std::stod(row.at("depth"))});
    CHECK(std::abs(wave[0]) == Approx(std::stod(row.at("amplitude"))).margin(2e-10));
    double delay = -std::arg(wave[0]) / yearly / seconds_per_day;
    if (delay < -1e-6) delay += days_per_year;
    CHECK(delay == Approx(std::stod(row.at("delay_days"))).margin(1e-7));
  }
}

// The same solution in time: column example_day207 (mean 10 degC, swing 8 K, coldest day 25; day 207.0).
TEST_CASE("Cell means of the undisturbed ground follow the slab solution through the year") {
  for (const auto& row : reference_solutions::reference_table("undisturbed_layers.csv")) {
    const double depth = std::stod(row.at("depth"));
    if (depth == 0 || depth > 8) continue;
    model::Ground ground{layers_from(row.at("layers")),
                         model::SeasonalSurface{283.15, 8, 25 * seconds_per_day, 0, 0, 0}};
    const auto grid =
        thin_grid(ground.layers, 14);  // below the lowest boundary, below which the ground is semi-infinite
    const ground::Undisturbed undisturbed(ground, grid, 0, seconds_per_year);
    std::vector<double> t0(grid.nz());
    undisturbed.at(207 * seconds_per_day, t0);
    const auto k = static_cast<std::size_t>(std::lround(depth / 0.01));
    const double upper = grid.solid[k - 1].conductivity, lower = grid.solid[k].conductivity;
    const double at_face = (upper * t0[k - 1] + lower * t0[k]) / (upper + lower) - 273.15;
    // The face between two 1 cm cells lies where both see the same flux. 1e-4 K: the wave bends within a cell.
    CHECK(at_face == Approx(std::stod(row.at("example_day207"))).margin(1e-4));
  }
}

// Fourier's law in series: T falls by q dz / k through each layer.
TEST_CASE("Geothermal heat flow raises the temperature by q dz/k through each layer") {
  model::Ground ground{{{20, "", {1.0, 2e6}}, {endless, "", {2.0, 2e6}}},
                       model::SeasonalSurface{283.15, 0, 0, 0.06, 0, 0}};
  const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 100}, ground.layers, {{1, 101}});
  const ground::Undisturbed undisturbed(ground, grid, 0, seconds_per_year);
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const double z = grid.z[k];
    const double expected = 283.15 + 0.06 * (std::min(z, 20.0) / 1.0 + std::max(z - 20.0, 0.0) / 2.0);
    CHECK(undisturbed.yearly_mean()[k] == Approx(expected).epsilon(1e-12));
  }
}

// Surface heated linearly, semi-infinite solid: Carslaw & Jaeger 1959, 2.5 [section from memory]: b t 4 i2erfc(z/(2
// sqrt(a t))).
TEST_CASE("A warming surface warms endless ground as the integrated error function says") {
  model::Ground ground{{{endless, "", {2.0, 2e6}}}, {}};
  const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 200}, ground.layers, {{1, 101}});
  model::SeasonalSurface surface{283.15, 0, 0, 0, 0, 0.05 / seconds_per_year};
  ground.undisturbed = surface;
  const double duration = 20 * seconds_per_year;
  const ground::Undisturbed undisturbed(ground, grid, 0, duration);
  std::vector<double> t0(grid.nz());
  undisturbed.at(duration, t0);
  for (std::size_t k = 0; k < grid.nz() && grid.z[k] < 60; ++k) {
    const double x = grid.z[k] / (2 * std::sqrt(1e-6 * duration));
    const double i2erfc4 = (1 + 2 * x * x) * std::erfc(x) - 2 * x * std::exp(-x * x) / std::sqrt(std::numbers::pi);
    // 2e-3 K of a 1 K rise: cell means against point values on cells of up to 8 m.
    CHECK(t0[k] - 283.15 == Approx(1.0 * i2erfc4).margin(4e-3));
  }
}

TEST_CASE("A measured profile is linear between its points and held beyond them") {
  model::Ground ground{{{endless, "", {2.0, 2e6}}}, model::MeasuredProfile{{{10, 283}, {50, 287}}}};
  const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 100}, ground.layers, {{1, 101}});
  const ground::Undisturbed undisturbed(ground, grid, 0, seconds_per_year);
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const double upper = grid.z_faces[k], lower = grid.z_faces[k + 1];
    if (lower <= 10) CHECK(undisturbed.yearly_mean()[k] == Approx(283));
    if (upper >= 10 && lower <= 50) CHECK(undisturbed.yearly_mean()[k] == Approx(283 + (grid.z[k] - 10) / 10));
    if (upper >= 50) CHECK(undisturbed.yearly_mean()[k] == Approx(287));
  }
}
