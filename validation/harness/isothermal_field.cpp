#include "validation/harness/isothermal_field.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/field/superposition.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/march/tableau.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::validation {

namespace {

constexpr double undisturbed = 283.15;  // [K]; only rises are looked at

/// A scenario of which only ground, bores and grid choice are used: the regime is made by hand.
model::Scenario scenario_of(const IsothermalField::Make& make) {
  model::Scenario s;
  s.ground.layers = make.layers;
  s.ground.undisturbed = model::MeanOverBore{undisturbed};
  if (make.heat_flow > 0)
    s.ground.undisturbed = model::SeasonalSurface{.mean = undisturbed, .heat_flow = make.heat_flow};
  s.bore.top = make.bores.front().top;
  s.bore.depth = make.bores.front().depth;
  s.bore.diameter = 2 * make.radius;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Positions{make.bores};
  s.flow = {0.1e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.flow.in_series = make.in_series;
  s.loads = model::ConstantGroundLoad{make.heat};
  s.run.years = make.years;
  s.run.grid.level = make.level;
  return s;
}

}  // namespace

IsothermalField::IsothermalField(const Make& make)
    : make_(make),
      assembly_(assembly::assemble(scenario_of(make))),
      // Capacities that pass within a millisecond.
      regime_{1,
              make.heat_rate,
              {bore::make_network(bore::NetworkParts{.bore_resistance = make.resistance,
                                                     .internal_resistance = make.internal,
                                                     .even_share = 0.5,
                                                     .odd_share = 0.5,
                                                     .grout_capacity = 1e-2,
                                                     .fluid_capacity = 1e-2})},
              std::vector<std::size_t>(assembly_.problem.nz(), 0)},
      forcing_{assembly_.loads.hour(0), &regime_},
      steps_(assembly_.problem, assembly_.multirate, forcing_, simulation::initial_state(assembly_.problem)) {}

void IsothermalField::march(const std::vector<double>& times, const std::function<void(double)>& at) {
  const double stable = march::ars222::real_stability / ground::stiffest_axial_rate(assembly_.problem.grid);
  steps_.march(times, 60, std::min(86400.0, stable), [&](double time) {
    shot_ = simulation::snapshot(assembly_.problem, assembly_.multirate, regime_, forcing_, steps_.state(),
                                 std::vector<bool>(assembly_.problem.groups.size(), true));
    at(time);
  });
}

double IsothermalField::fluid() const {
  return (steps_.operating_point().eft + steps_.operating_point().lft) / 2 - undisturbed;
}

double IsothermalField::inlet() const {
  return steps_.operating_point().lft - undisturbed;
}

double IsothermalField::share_of_inlet(std::size_t bore) const {
  // Length times mean wall, as share() counts it, is H fluid - share Q R; R Q_b = H (inlet - Q_b/(2 W)) - that.
  const double length = make_.bores[bore].depth;
  const double above_wall = length * (inlet() - fluid()) + share(bore) * make_.heat * make_.resistance;
  return above_wall / (make_.resistance + length / (2 * make_.heat_rate)) / make_.heat;
}

double IsothermalField::wall_of(std::size_t bore, std::size_t k) const {
  return shot_.wall_temperature[assembly_.groups.of_bore[bore] * assembly_.problem.nz() + k] - undisturbed;
}

/// Lagrange's polynomial through at most four cells of [first, past) that lie in the depth's own layer of the log:
/// across a face the profile has a kink.
double IsothermalField::at_depth(double depth, std::size_t first, std::size_t past,
                                 const std::function<double(std::size_t)>& of_layer) const {
  const auto& z = assembly_.problem.grid.z;
  double from = 0, to = 0;
  for (const model::Layer& layer : make_.layers) {
    from = to;
    to = layer.bottom;
    if (depth < to) break;
  }
  while (first + 1 < past && z[first] < from) ++first;
  while (past - 1 > first && z[past - 1] > to) --past;
  while (past - first > 4) (depth - z[first] > z[past - 1] - depth) ? ++first : --past;
  double sum = 0;
  for (std::size_t k = first; k < past; ++k) {
    double weight = 1;
    for (std::size_t other = first; other < past; ++other) {
      if (other != k) weight *= (depth - z[other]) / (z[k] - z[other]);
    }
    sum += weight * of_layer(k);
  }
  return sum;
}

double IsothermalField::wall(std::size_t bore, double depth) const {
  const march::Group& group = assembly_.problem.groups[assembly_.groups.of_bore[bore]];
  return at_depth(depth, group.first, group.end, [&](std::size_t k) { return wall_of(bore, k); });
}

double IsothermalField::mean_wall(std::size_t bore) const {
  return fluid() - share(bore) * make_.heat * make_.resistance / make_.bores[bore].depth;
}

std::vector<std::pair<double, double>> IsothermalField::wall_profile(std::size_t bore) const {
  const march::Group& group = assembly_.problem.groups[assembly_.groups.of_bore[bore]];
  std::vector<std::pair<double, double>> profile;
  for (std::size_t k = group.first; k < group.end; ++k) {
    profile.emplace_back(assembly_.problem.grid.z[k], wall_of(bore, k));
  }
  return profile;
}

double IsothermalField::share(std::size_t bore, double from, double to) const {
  const march::Group& group = assembly_.problem.groups[assembly_.groups.of_bore[bore]];
  const auto within = ground::active_fraction(assembly_.problem.grid, {from, to});
  double sum = 0;
  for (std::size_t k = group.first; k < group.end; ++k) {
    const double length = std::min(group.fraction[k], within[k]) * assembly_.problem.grid.height(k);
    sum += length * (fluid() - wall_of(bore, k)) / make_.resistance;
  }
  return sum / make_.heat;
}

double IsothermalField::share(std::size_t bore) const {
  const model::BoreSite& site = make_.bores[bore];
  return share(bore, site.top, site.top + site.depth);
}

double IsothermalField::ground(double x, double y, double depth) const {
  const march::Problem& problem = assembly_.problem;
  const march::StateLayout layout(problem);
  return at_depth(depth, 0, problem.nz(), [&](std::size_t k) {
    double rise = 0;
    for (std::size_t b = 0; b < make_.bores.size(); ++b) {
      const double distance = std::hypot(x - make_.bores[b].x, y - make_.bores[b].y);
      const double* block = steps_.state().y.data() + assembly_.groups.of_bore[b] * layout.block();
      for (const auto& w : field::radial_weights(problem.grid.r, distance)) {
        rise += w.weight * block[(layout.ground_row() + w.cell) * layout.row() + k];
      }
    }
    return rise;
  });
}

}  // namespace stillground::validation
