#include "validation/harness/steady_bore.hpp"

#include <algorithm>
#include <limits>

#include "engine/assembly/assembly.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::validation {

namespace {

constexpr double top = 2;  // [m]

/// The engine's own grid for a bore of this depth, in ground that holds the wall.
march::Problem lone_problem(const SteadyBore::Make& make) {
  const bool cold = make.wall == WallHeld::at_one_temperature;
  const model::Solid ground = cold ? model::Solid{1e9, 1e18} : model::Solid{1e-3, 2e6};
  model::Scenario s;
  // Networks change where the ground does: a face lies there.
  const std::size_t shares = make.networks.size();
  for (std::size_t n = 1; n < shares; ++n) {
    const double bottom = top + make.depth * static_cast<double>(n) / static_cast<double>(shares);
    s.ground.layers.push_back({bottom, "holds the wall", ground});
  }
  s.ground.layers.push_back({std::numeric_limits<double>::infinity(), "holds the wall", ground});
  s.ground.undisturbed = model::MeanOverBore{0};
  s.bore.top = top;
  s.bore.depth = make.depth;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Grid{1, 1, 6};
  s.flow = {0.3e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{1};
  s.run.years = 1;
  s.run.grid = make.grid;
  march::Problem problem = assembly::assemble(s).problem;
  std::fill(problem.axial.begin(), problem.axial.end(), 0.0);
  problem.passes = make.networks.front().passes;
  return problem;
}

std::vector<bore::Network> networks(const march::Problem& problem, const SteadyBore::Make& make) {
  std::vector<bore::Network> all;
  const auto shares = static_cast<double>(make.networks.size());
  for (const double z : problem.grid.z) {
    const double share = std::clamp((z - top) / make.depth * shares, 0.0, shares - 1);
    all.push_back(make.networks[static_cast<std::size_t>(share)]);
  }
  return all;
}

}  // namespace

SteadyBore::SteadyBore(const Make& make)
    : depth_(make.depth),
      problem_(lone_problem(make)),
      regime_(march::layer_by_layer(1, make.heat_rate, networks(problem_, make))),
      forcing_{{0, 0, 0, heat()}, &regime_},
      steps_(problem_, {}, forcing_, simulation::initial_state(problem_)) {
  // Twenty steps beside which everything is fast: the pair is L-stable, what has not settled is damped out. Ground of
  // even heat warms on for ever; once its outer edge has the news (R^2/a = 2e14 s) everything rises alike, and so
  // slowly that grout takes up 1e-7 of the heat.
  const double settled = make.wall == WallHeld::at_one_temperature ? 1e8 : 2e15;
  steps_.march({settled}, settled / 20, settled, [](double) {});
}

std::vector<double> SteadyBore::walls() const {
  const march::StateLayout layout(problem_);
  std::vector<double> all;
  for (std::size_t k = problem_.groups[0].first; k < problem_.groups[0].end; ++k) {
    const double first_node = steps_.state().y[layout.ground_row() * layout.row() + k];
    const double to_node = march::wall_to_first_node(problem_.grid, problem_.grid.solid[k].conductivity);
    all.push_back(first_node + steps_.wall_heat()[k] * to_node);
  }
  return all;
}

std::vector<SteadyBore::Passage> SteadyBore::recorded() const {
  const auto shot = simulation::snapshot(problem_, {}, regime_, forcing_, steps_.state(), {true});
  std::vector<Passage> all;
  for (std::size_t k = problem_.groups[0].first; k < problem_.groups[0].end; ++k) {
    all.push_back({problem_.grid.z[k] - top, shot.fluid_down[k], shot.fluid_up[k]});
  }
  return all;
}

double SteadyBore::mean_wall() const {
  const auto wall = walls();
  double sum = 0;
  for (std::size_t n = 0; n < wall.size(); ++n) sum += wall[n] * problem_.grid.height(problem_.groups[0].first + n);
  return sum / depth_;
}

double SteadyBore::effective_resistance() const {
  return ((inlet() + outlet()) / 2 - mean_wall()) / heat_per_length;
}

std::vector<SteadyBore::Passage> SteadyBore::passages(std::size_t pass) const {
  const march::Group& group = problem_.groups[0];
  const march::StateLayout layout(problem_);
  const auto row = [&](std::size_t which) { return steps_.state().y.data() + which * layout.row(); };
  const double *down = row(layout.down_row(pass)), *up = row(layout.up_row(pass));
  const double entered = pass == 0 ? inlet() : row(layout.up_row(pass - 1))[group.first];
  std::vector<Passage> all;
  for (std::size_t k = group.first; k <= group.end; ++k) {
    const double from_above = k == group.first ? entered : down[k - 1];
    const double from_below = k == group.end ? down[k - 1] : up[k];  // at the toe the streams are one
    all.push_back({problem_.grid.z_faces[k] - top, from_above, from_below});
  }
  return all;
}

}  // namespace stillground::validation
