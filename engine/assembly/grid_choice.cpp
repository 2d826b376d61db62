#include "engine/assembly/grid_choice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/assembly/assembly.hpp"
#include "engine/field/layout.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::assembly {

ground::GridSpec choose_grid(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores) {
  const model::GridChoice& choice = scenario.run.grid;
  const bool fine = choice.level == model::GridChoice::Level::fine;
  double alpha = 0;
  for (const auto& layer : scenario.ground.layers) alpha = std::max(alpha, layer.solid.diffusivity());
  const double reach = std::sqrt(4 * alpha * scenario.run.years * seconds_per_year);
  const auto chosen = [](double own, double otherwise) { return own > 0 ? own : otherwise; };

  ground::GridSpec spec;
  spec.bore_radius = scenario.bore.diameter / 2;
  spec.outer_radius = chosen(choice.outer_radius, std::max(300.0, field::radius(bores) + 4 * reach));
  const double rings = std::log(spec.outer_radius / spec.bore_radius) / std::log(ring_ratio) * (fine ? 2 : 1);
  spec.radial_cells = choice.radial_cells > 0 ? choice.radial_cells : static_cast<int>(std::ceil(rings));
  spec.end_cell = chosen(choice.end_cell, fine ? 0.25 : 0.5);
  spec.growth = chosen(choice.growth, fine ? 1.15 : 1.2);
  spec.largest_cell = chosen(choice.largest_cell, fine ? 4.0 : 8.0);
  spec.bottom_margin = chosen(choice.bottom_margin, std::max(60.0, 3 * reach));
  return spec;
}

double stable_step(const model::Scenario& scenario, const ground::Grid& grid, std::vector<Warning>& warnings) {
  const double longest = march::ars222::real_stability / ground::stiffest_axial_rate(grid);
  double step = scenario.run.step;
  for (int parts = static_cast<int>(std::lround(seconds_per_hour / step)); step > longest;
       step = seconds_per_hour / ++parts) {
  }
  if (step < 1) {
    throw InputError(scenario.place("ground.layers"), "ground.layers",
                     "a layer is too thin to be marched (it would need steps below a second); join it to a neighbour");
  }
  if (step < scenario.run.step) {
    warnings.push_back(
        {scenario.place("run.step"),
         fmt::format("the thinnest layer needs steps of {:g} s instead of {:g} s", step, scenario.run.step), ""});
  }
  return step;
}

march::SlowModes choose_slow_modes(const model::Run& run, const ground::Grid& grid, double refresh) {
  const bool one = run.clocks == model::Run::Clocks::one || run.stepper == model::Run::Stepper::reference;
  if (one || std::fmod(refresh, seconds_per_day) != 0) return {};
  return march::choose_slow_modes(grid, ground::stiffest_axial_rate(grid));
}

}  // namespace stillground::assembly
