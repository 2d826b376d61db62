#include "engine/march/rates.hpp"

#include <algorithm>
#include <array>

#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march {

namespace {

double topmost(const StateLayout& layout, const Group& group, std::size_t g, const double* y, std::size_t which) {
  return y[g * layout.block() + which * layout.row() + group.first];
}

/// Mean over the groups that `counts(group)` of their topmost cell in a row, weighted with what flows there, or with
/// their members where nothing does.
template <class Counts>
double mixed(const Problem& problem, const Forcing& forcing, const double* y, std::size_t which, Counts&& counts) {
  const StateLayout layout(problem);
  const bool flows = heat_rate(problem, forcing) > 0;
  double sum = 0, weights = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const Group& group = problem.groups[g];
    const FlowRegime* regime = forcing.of(g);
    if (!regime || !counts(group)) continue;
    const double weight = group.members * (flows ? regime->heat_rate : 1.0);
    sum += weight * topmost(layout, group, g, y, which);
    weights += weight;
  }
  return sum / weights;
}

/// rho c A_i theta_i' = K_{i-1/2} (theta_{i-1} - theta_i) + K_{i+1/2} (theta_{i+1} - theta_i); the wall's heat is added
/// by the bore.
void add_radial(const Problem& problem, const double* y, double* rate) {
  const StateLayout layout(problem);
  for (std::size_t i = 0; i + 1 < problem.nr(); ++i) {
    const double conductance = problem.grid.unit_conductance(i);
    for (std::size_t k = 0; k < problem.nz(); ++k) {
      const std::size_t inner = (layout.ground_row() + i) * layout.row() + k;
      const std::size_t outer = inner + layout.row();
      const model::Solid& solid = problem.grid.solid[k];
      const double heat = conductance * solid.conductivity * (y[inner] - y[outer]);
      rate[inner] -= heat / (solid.heat_capacity * problem.grid.ring_area(i));
      rate[outer] += heat / (solid.heat_capacity * problem.grid.ring_area(i + 1));
    }
  }
}

/// One layer's mean streams, (T_in + T_out)/2, and what flows through them, as the march takes them.
struct Streams {
  bore::PerStream mean{};
  bore::PerStream carried{};  ///< m c (inlet - outlet) [W]
};

Streams streams_of(const Problem& problem, const Group& group, double heat_rate, double inlet, const double* y,
                   std::size_t k) {
  const StateLayout layout(problem);
  const std::size_t row = layout.row();
  Streams streams;
  for (std::size_t pass = 0; pass < problem.passes; ++pass) {
    const double* down = y + layout.down_row(pass) * row;
    const double* up = y + layout.up_row(pass) * row;
    const std::size_t d = layout.down_row(pass), u = layout.up_row(pass);
    const double top = pass == 0 ? inlet : y[layout.up_row(pass - 1) * row + group.first];
    const double above = k == group.first ? top : down[k - 1];
    const double below = k + 1 == group.end ? down[k] : up[k + 1];
    const bool flows = heat_rate > 0;
    streams.mean.at(d) = flows ? (above + down[k]) / 2 : down[k];
    streams.mean.at(u) = flows ? (below + up[k]) / 2 : up[k];
    streams.carried.at(d) = heat_rate * (above - down[k]);
    streams.carried.at(u) = heat_rate * (below - up[k]);
  }
  return streams;
}

/// Streams, grout and wall of one group, q_m the heat that mode m takes from the fluid per metre:
///   C_s L T_s' = W (T_in - T_out) - L sum_m gives_ms q_m,   q_m = (sum_s reads_ms mean_s - T_i)/R_inner
///   C_i T_i' = q_m - (T_i - T_o)/R_middle,   C_o T_o' = (T_i - T_o)/R_middle - q_out
///   q_out = (T_o - T0 - N - theta_0)/(R_outer + R_first), m = 0;   T_o/R_outer for the others
///   rho c A_0 theta_0' += f q_out, m = 0
void add_bore(const Problem& problem, const Group& group, const FlowRegime& regime, double inlet, const double* y,
              const double* ambient, double* rate) {
  const StateLayout layout(problem);
  const std::size_t row = layout.row();
  for (std::size_t k = group.first; k < group.end; ++k) {
    const bore::Network& net = regime.network(k);
    const model::Solid& solid = problem.grid.solid[k];
    const double length = group.fraction[k] * problem.grid.height(k);
    const Streams streams = streams_of(problem, group, regime.heat_rate, inlet, y, k);
    bore::PerStream given{};
    for (std::size_t m = 0; m < problem.streams(); ++m) {
      const bore::Mode& mode = net.modes.at(m);
      const std::size_t inner = layout.inner_row(m) * row + k, outer = layout.outer_row(m) * row + k;
      double fluid = 0;
      for (std::size_t s = 0; s < problem.streams(); ++s) fluid += mode.reads.at(s) * streams.mean.at(s);
      double out = y[outer] / mode.outer;
      if (m == 0) {
        const double theta = y[layout.ground_row() * row + k];
        out = (y[outer] - ambient[k] - theta) / (mode.outer + wall_to_first_node(problem.grid, solid.conductivity));
        rate[layout.ground_row() * row + k] +=
            group.fraction[k] * out / (solid.heat_capacity * problem.grid.ring_area(0));
      }
      // Nodes without capacity are where the heat through them is equal on both sides.
      const bool stores = mode.inner_capacity > 0;
      const double heat = stores ? (fluid - y[inner]) / mode.inner : fluid / mode.resistance();
      if (stores) {
        const double between = (y[inner] - y[outer]) / mode.middle;
        rate[inner] += (heat - between) / mode.inner_capacity;
        rate[outer] += (between - out) / mode.outer_capacity;
      }
      for (std::size_t s = 0; s < problem.streams(); ++s) given.at(s) += mode.gives.at(s) * heat;
    }
    for (std::size_t s = 0; s < problem.streams(); ++s) {
      rate[s * row + k] += (streams.carried.at(s) - length * given.at(s)) / (net.capacity.at(s) * length);
    }
  }
}

}  // namespace

double heat_rate(const Problem& problem, const Forcing& forcing) {
  double sum = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const FlowRegime* regime = forcing.of(g);
    if (regime && problem.groups[g].returns) sum += problem.groups[g].members * regime->heat_rate;
  }
  return sum;
}

double mixed_outlet(const Problem& problem, const Forcing& forcing, const double* y) {
  return mixed(problem, forcing, y, StateLayout(problem).up_row(problem.passes - 1),
               [](const Group& group) { return group.returns; });
}

double topmost_down(const Problem& problem, const Forcing& forcing, const double* y) {
  return mixed(problem, forcing, y, StateLayout(problem).down_row(),
               [](const Group& group) { return group.upstream == Group::none; });
}

Fluid fluid_of(const Problem& problem, std::size_t g, const double* block) {
  const Group& group = problem.groups[g];
  // Four sums side by side: one would wait for itself at every layer.
  std::array<Fluid, 4> parts;
  const double *fraction = group.fraction.data(), *face = problem.grid.z_faces.data();
  const std::size_t row = StateLayout(problem).row(), passes = problem.passes;
  for (std::size_t k = group.first; k < group.end; ++k) {
    const double length = fraction[k] * (face[k + 1] - face[k]);
    double streams = block[k] + block[row + k];
    if (passes == 2) streams += block[2 * row + k] + block[3 * row + k];
    parts[k % 4].length += length;
    parts[k % 4].sum += length * streams;
  }
  const auto total = [&](double Fluid::*what) {
    return group.members * ((parts[0].*what + parts[1].*what) + (parts[2].*what + parts[3].*what));
  };
  return {total(&Fluid::length), total(&Fluid::sum) / static_cast<double>(problem.streams())};
}

double field_inlet(const Problem& problem, const Forcing& forcing, const double* y) {
  const double total = heat_rate(problem, forcing);
  if (total == 0) return 0;
  const double eft = mixed_outlet(problem, forcing, y);
  return eft + loop::exchange(forcing.demand, problem.pumps, eft).to_ground / total;
}

double inlet_of(const Problem& problem, std::size_t group, double field, const double* y) {
  const std::size_t upstream = problem.groups[group].upstream;
  if (upstream == Group::none) return field;
  const StateLayout layout(problem);
  return topmost(layout, problem.groups[upstream], upstream, y, layout.up_row(problem.passes - 1));
}

bore::PerStream streams_in_middle(const Problem& problem, const Group& group, double heat_rate, double inlet,
                                  const double* block, std::size_t k) {
  return streams_of(problem, group, heat_rate, inlet, block, k).mean;
}

void implicit_rate(const Problem& problem, const Forcing& forcing, const double* y, const double* ambient,
                   double* rate) {
  const StateLayout layout(problem);
  std::fill(rate, rate + layout.size(), 0.0);
  const double inlet = field_inlet(problem, forcing, y);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const Group& group = problem.groups[g];
    const double* block = y + g * layout.block();
    add_radial(problem, block, rate + g * layout.block());
    const FlowRegime* regime = forcing.of(g);
    if (!regime) continue;
    add_bore(problem, group, *regime, inlet_of(problem, g, inlet, y), block, ambient + g * layout.row(),
             rate + g * layout.block());
  }
}

}  // namespace stillground::march
