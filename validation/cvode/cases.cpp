#include "validation/cvode/cases.hpp"

#include <cmath>

#include "tests/march_scenario.hpp"

namespace stillground::validation {

namespace {

model::Scenario base(int bores, double spacing, int rings) {
  auto s = test::scenario(1, 1);
  s.bore.depth = 60;
  s.layout = model::Grid{1, bores, spacing};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  s.run.grid.radial_cells = rings;
  s.run.grid.outer_radius = s.bore.diameter / 2 * std::pow(assembly::ring_ratio, rings);
  s.run.grid.bottom_margin = 20;
  return s;
}

}  // namespace

model::Scenario lone_bore() {
  return base(1, 0, 28);
}

model::Scenario three_bores(double spacing) {
  auto s = base(3, spacing, 24);
  s.run.grid.outer_radius = 45;
  return s;
}

reference_solutions::Field field_of(const march::Problem& problem) {
  reference_solutions::Field field;
  field.r_faces = problem.grid.r_faces;
  field.z_faces = problem.grid.z_faces;
  for (const model::Solid& solid : problem.grid.solid) {
    field.conductivity.push_back(solid.conductivity);
    field.heat_capacity.push_back(solid.heat_capacity);
  }
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    reference_solutions::FieldBore bore{problem.groups[g].fraction, problem.groups[g].members, {}};
    for (const auto& term : problem.coupling.terms(g)) bore.neighbours.push_back({term.source, term.cell, term.weight});
    field.bores.push_back(std::move(bore));
  }
  field.undisturbed = [&problem](double time, std::span<double> t0) { problem.undisturbed.at(time, t0); };
  return field;
}

namespace {

reference_solutions::Chain chain_of(const bore::Mode& mode) {
  return {mode.inner, mode.middle, mode.outer, mode.inner_capacity, mode.outer_capacity};
}

}  // namespace

reference_solutions::Flow flow_of(const march::FlowRegime& regime) {
  reference_solutions::Flow flow{regime.heat_rate, {}};
  for (std::size_t k = 0; k < regime.of_layer.size(); ++k) {
    const bore::Network& net = regime.network(k);
    flow.sections.push_back({chain_of(net.modes[0]), chain_of(net.modes[1]), net.capacity[0]});
  }
  return flow;
}

std::vector<double> jumping_load(std::size_t hours, double most, bool idle) {
  test::Noise noise;
  std::vector<double> load;
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double draw = most * (2 * noise() - 1);
    load.push_back(idle && noise() < 0.25 ? 0 : draw);
  }
  return load;
}

}  // namespace stillground::validation
