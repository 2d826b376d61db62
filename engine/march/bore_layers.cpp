#include "engine/march/bore_layers.hpp"

#include <Eigen/LU>

namespace stillground::march {

// Symbols as in bore_elimination.hpp and README.md: one implicit stage, kappa its weight times the step.

namespace {

/// What of a layer depends on its kind alone: its ground, its network, the part f of it that the bore fills.
/// theta_0 = e_0 + wall_response q_w and q_w = f q put the first ring's own response behind mode 0:
///   q = (T_o - (T0 + N + e_0))/(R_outer + R_first + f wall_response),   A = sum_m gives_m^T U_m reads_m.
template <int M>
void fill_kind(const Problem& problem, const Group& group, const bore::Network& net, const Vector& wall_response,
               double kappa, std::size_t k, BoreLayer<M>& layer) {
  layer.fraction = group.fraction[k];
  layer.wall_response = wall_response[k];
  const double outer = net.modes[0].outer + wall_to_first_node(problem.grid, problem.grid.solid[k].conductivity) +
                       layer.fraction * layer.wall_response;
  layer.inverse_outer = 1 / outer;
  layer.exchange.setZero();
  for (int m = 0; m < layer.streams; ++m) {
    const bore::Mode& mode = net.modes[static_cast<std::size_t>(m)];
    layer.chain[m] = Chain(mode, m == 0 ? outer : mode.outer, kappa);
    for (int s = 0; s < layer.streams; ++s) {
      layer.reads(m, s) = mode.reads[static_cast<std::size_t>(s)];
      layer.gives(m, s) = mode.gives[static_cast<std::size_t>(s)];
    }
    layer.exchange.noalias() +=
        layer.gives.row(m).transpose() * layer.chain[m].effective_conductance() * layer.reads.row(m);
  }
}

/// With u_in = G d + g from below (G = 1, g = 0 below the toe) the streams' block of BoreElimination's equations,
///   [F + W + P_dd + P_du G     P_du        ] [d]
///   [P_ud + (P_uu - W) G       F + W + P_uu] [u],
/// its inverse, and d and u per d_in, of which the latter is the layer's own G: returned.
template <int M>
Square<M> fill_streams(double heat_rate, const Square<M>& gain_below, BoreLayer<M>& layer) {
  const Square<2 * M> p = layer.length / 2 * layer.exchange;
  const Square<M> w = heat_rate * Square<M>::Identity();
  const Square<M> p_dd = p.template topLeftCorner<M, M>(), p_du = p.template topRightCorner<M, M>();
  const Square<M> p_ud = p.template bottomLeftCorner<M, M>(), p_uu = p.template bottomRightCorner<M, M>();
  Square<2 * M> block = p;
  block.diagonal() += layer.storage;
  block.diagonal().array() += heat_rate;
  block.template topLeftCorner<M, M>() += p_du * gain_below;
  block.template bottomLeftCorner<M, M>() += (p_uu - w) * gain_below;
  layer.inverse = block.inverse();
  layer.mixed = p_du;
  layer.counter = w - p_uu;
  Eigen::Matrix<double, 2 * M, M> from_inlet;
  from_inlet.template topRows<M>() = w - p_dd;
  from_inlet.template bottomRows<M>() = -p_ud;
  const Eigen::Matrix<double, 2 * M, M> solved = layer.inverse * from_inlet;
  layer.down_from_inlet = solved.template topRows<M>();
  layer.gain = solved.template bottomRows<M>();
  return layer.gain;
}

}  // namespace

/// C_o (T_o - T_o,old) = kappa ((T_i - T_o)/R_middle + (E - T_o)/beyond), solved for T_o; put into
/// C_i (T_i - T_i,old) = kappa ((M - T_i)/R_inner + (T_o - T_i)/R_middle), solved for T_i.
Chain::Chain(const bore::Mode& mode, double beyond, double kappa)
    : conductance(1 / mode.inner), stores(mode.inner_capacity > 0) {
  const double first = kappa / mode.inner, second = kappa / mode.middle, third = kappa / beyond;
  const double outer = mode.outer_capacity + second + third;
  outer_from_old = mode.outer_capacity / outer;
  outer_from_far = third / outer;
  outer_from_inner = second / outer;
  const double inner = mode.inner_capacity + first + second * (1 - outer_from_inner);
  inner_from_old = mode.inner_capacity / inner;
  inner_from_fluid = first / inner;
  inner_from_outer = second / inner;
}

/// From the toe up. At the top, one pass: gain = G; two, whose second takes what the first brings up (in_2 = u_1):
///   u_1 = G_11 in_1 + G_12 in_2,   u_2 = G_21 in_1 + G_22 in_2,   gain = G_21 + G_22 G_11/(1 - G_12).
/// Stagnant: (F + L A) T = F T_old + s, streams of their own layer alone.
template <int M>
void BoreLayers<M>::make(const Problem& problem, const Group& group, const FlowRegime& regime,
                         const Vector& wall_response, double kappa) {
  flows_ = regime.heat_rate > 0;
  first_ = group.first;
  gain_ = 0;
  layers_.resize(group.end - group.first);
  Square<M> gain_below = Square<M>::Identity();  // at the toe what came down goes up
  for (std::size_t n = layers_.size(); n-- > 0;) {
    const std::size_t k = first_ + n;
    const bore::Network& net = regime.network(k);
    BoreLayer<M>& layer = layers_[n];
    const bool as_below = n + 1 < layers_.size() && regime.of_layer[k] == regime.of_layer[k + 1] &&
                          group.fraction[k] == group.fraction[k + 1] && wall_response[k] == wall_response[k + 1] &&
                          problem.grid.solid[k].conductivity == problem.grid.solid[k + 1].conductivity;
    if (as_below) {
      layer = layers_[n + 1];
    } else {
      fill_kind(problem, group, net, wall_response, kappa, k, layer);
    }
    layer.length = layer.fraction * problem.grid.height(k);
    for (int s = 0; s < layer.streams; ++s) {
      layer.storage(s) = net.capacity[static_cast<std::size_t>(s)] * layer.length / kappa;
    }
    if (flows_) {
      gain_below = fill_streams(regime.heat_rate, gain_below, layer);
      continue;
    }
    Square<2 * M> block = layer.length * layer.exchange;
    block.diagonal() += layer.storage;
    layer.inverse = block.inverse();
  }
  if (!flows_) return;
  gain_ = gain_below(M - 1, 0);
  if constexpr (M == 2) gain_ += gain_below(1, 1) * gain_below(0, 0) / (1 - gain_below(0, 1));
}

/// in_1 = T_in,   in_2 = (G_11 T_in + g_1)/(1 - G_12).
template <int M>
Column<M> BoreLayers<M>::inlets(double inlet, [[maybe_unused]] double offset) const {
  Column<M> in;
  in(0) = inlet;
  if constexpr (M == 2) {
    const Square<M>& top = layers_.front().gain;
    in(1) = (top(0, 0) * inlet + offset) / (1 - top(0, 1));
  }
  return in;
}

/// T_out at T_in = 0: g_2 + G_22 g_1/(1 - G_12).
template <int M>
double BoreLayers<M>::outlet(const Column<M>& up) const {
  if constexpr (M == 1) return up(0);
  const Square<M>& top = layers_.front().gain;
  return up(M - 1) + top(M - 1, M - 1) * up(0) / (1 - top(0, M - 1));
}

template class BoreLayers<1>;
template class BoreLayers<2>;

}  // namespace stillground::march
