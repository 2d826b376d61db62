#pragma once

#include <cmath>
#include <limits>

#include "engine/bore/coaxial.hpp"
#include "engine/bore/double_u.hpp"
#include "engine/field/groups.hpp"
#include "engine/field/layout.hpp"
#include "engine/ground/axial.hpp"
#include "engine/march/ambient.hpp"
#include "engine/march/blank_state.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::test {

/// Three bores on a line (two groups) in layered ground, invented.
inline march::Problem small_field(int radial_cells = 24) {
  const model::Ground ground{
      {{9, "clay", {1.3, 2.6e6}}, {std::numeric_limits<double>::infinity(), "limestone", {2.7, 2.2e6}}},
      model::SeasonalSurface{283.5, 9, 25 * 86400.0, 0.06, 0, 0}};
  const std::vector<model::BoreSite> bores{{0, 0, 1.5, 60, 0}, {6, 0, 1.5, 60, 0}, {12, 0, 1.5, 60, 0}};
  const auto grid = ground::make_grid({0.075, 200, radial_cells, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
  const auto groups = field::equal_groups(bores, field::in_series(bores.size(), 1));
  march::Problem problem{.grid = grid,
                         .axial = ground::axial_conductances(grid),
                         .groups = {},
                         .coupling = field::Coupling(bores, groups, grid.r),
                         .undisturbed = ground::Undisturbed(ground, grid, 0, 1e8),
                         .pumps = {}};
  for (const auto& members : groups.members) {
    march::Group group;
    group.fraction = ground::active_fraction(grid, {1.5, 61.5});
    group.members = static_cast<double>(members.size());
    while (group.fraction[group.first] == 0) ++group.first;
    group.end = group.first;
    while (group.end < grid.nz() && group.fraction[group.end] > 0) ++group.end;
    problem.groups.push_back(group);
  }
  return problem;
}

/// A network of common size: R_b 0.1, R_a 0.4 K m/W.
inline march::FlowRegime regime(const march::Problem& problem, double heat_rate) {
  const auto network = bore::make_network(bore::NetworkParts{.bore_resistance = 0.1,
                                                             .internal_resistance = 0.4,
                                                             .even_share = 0.4,
                                                             .odd_share = 0.3,
                                                             .grout_capacity = 4.5e4,
                                                             .fluid_capacity = 3900.0,
                                                             .even_spread = 0.25,
                                                             .odd_wall_share = 0.2,
                                                             .ground_capacity = 4e4});
  return {heat_rate > 0 ? 1 : 0, heat_rate, {network}, std::vector<std::size_t>(problem.nz(), 0)};
}

/// Two U's in series on a square, of common size.
inline march::FlowRegime series_regime(const march::Problem& problem, double heat_rate, bool crossed) {
  const auto network = bore::make_network(bore::SeriesParts{.bore_resistance = 0.07,
                                                            .alternate_resistance = 0.11,
                                                            .opposite_resistance = 0.14,
                                                            .even_share = 0.4,
                                                            .alternate_share = 0.3,
                                                            .opposite_share = 0.35,
                                                            .grout_capacity = 4.5e4,
                                                            .fluid_capacity = 1900.0,
                                                            .opposite_legs = crossed,
                                                            .even_spread = 0.2,
                                                            .alternate_wall_share = 0.15,
                                                            .opposite_wall_share = 0.2,
                                                            .ground_capacity = 4e4});
  return {heat_rate > 0 ? 1 : 0, heat_rate, {network}, std::vector<std::size_t>(problem.nz(), 0)};
}

/// A pipe within a pipe, of common size.
inline march::FlowRegime concentric_regime(const march::Problem& problem, double heat_rate, bool down_annulus) {
  const auto network = bore::make_network(bore::ConcentricParts{.wall_resistance = 0.06,
                                                                .internal_resistance = 0.15,
                                                                .share = 0.4,
                                                                .grout_capacity = 3e4,
                                                                .annulus_capacity = 9000.0,
                                                                .inner_capacity = 4000.0,
                                                                .down_annulus = down_annulus,
                                                                .spread = 0.25});
  return {heat_rate > 0 ? 1 : 0, heat_rate, {network}, std::vector<std::size_t>(problem.nz(), 0)};
}

/// Undisturbed ground, fluid and grout at rest with it.
inline march::State at_rest(const march::Problem& problem, const march::Multirate& multirate = {}) {
  const march::StateLayout layout(problem);
  march::State state = march::blank_state(problem, multirate);
  std::vector<double> t0(problem.nz());
  problem.undisturbed.at(0, t0);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    for (std::size_t k = problem.groups[g].first; k < problem.groups[g].end; ++k) {
      double* block = state.y.data() + g * layout.block();
      for (std::size_t row = 0; row <= layout.outer_row(); ++row) block[row * layout.row() + k] = t0[k];
    }
  }
  return state;
}

/// Heat in ground, grout and fluid of all bores against theta = 0 and 0 K of fluid and grout [J].
inline double stored(const march::Problem& problem, const march::FlowRegime& regime, const march::State& state) {
  const march::StateLayout layout(problem);
  double sum = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const auto& group = problem.groups[g];
    const double* block = state.y.data() + g * layout.block();
    double own = 0;
    for (std::size_t k = 0; k < problem.nz(); ++k) {
      const double height = problem.grid.height(k);
      for (std::size_t i = 0; i < problem.nr(); ++i) {
        own += problem.grid.solid[k].heat_capacity * problem.grid.ring_area(i) * height *
               block[(layout.ground_row() + i) * layout.row() + k];
      }
      const auto& net = regime.network(k);
      double in_bore = net.modes[0].inner_capacity * block[layout.inner_row() * layout.row() + k] +
                       net.modes[0].outer_capacity * block[layout.outer_row() * layout.row() + k];
      for (std::size_t i = 0; i < problem.streams(); ++i) in_bore += net.capacity[i] * block[i * layout.row() + k];
      own += group.fraction[k] * height * in_bore;
    }
    sum += group.members * own;
  }
  return sum;
}

}  // namespace stillground::test
