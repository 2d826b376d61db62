#include "engine/march/fused/packed_bore.hpp"

#include <algorithm>

#include "engine/march/state_layout.hpp"

namespace stillground::march::fused {

void PackedBore::make(const Problem& problem, const Group& group, const FlowRegime& regime, const Vector& wall_response,
                      double kappa, std::size_t lanes) {
  passes_ = problem.passes;
  if (passes_ == 1) {
    one_.make(problem, group, regime, wall_response, kappa);
    lay_out(problem, one_, lanes);
  } else {
    two_.make(problem, group, regime, wall_response, kappa);
    lay_out(problem, two_, lanes);
  }
}

double PackedBore::outlet(const std::array<double, 2>& up) const {
  return passes_ == 1 ? up[0] : two_.outlet({up[0], up[1]});
}

std::array<double, 2> PackedBore::inlets(double inlet, const std::array<double, 2>& up) const {
  return {inlet, passes_ == 1 ? 0.0 : two_.inlets(inlet, up[0])(1)};
}

template <int M>
void PackedBore::lay_out(const Problem& problem, const BoreLayers<M>& layers, std::size_t lanes) {
  constexpr std::size_t streams = 2 * M, inputs = 3 * streams;
  const std::size_t row = StateLayout(problem).row();
  if (memory_.empty()) {
    constexpr std::size_t rows =
        streams * (inputs + 1) + 2 * streams * M + 8 * M * M + 4 * streams + streams * streams + 5;
    memory_.assign(rows * row, 0.0);  // outside the bore, and in the padding, they stay zero
    double* at = memory_.data();
    const auto take = [&](std::size_t count) {
      double* taken = at;
      at += count * row;
      return taken;
    };
    rows_.response = take(streams * (inputs + 1));
    rows_.from_below = take(streams * M);
    rows_.from_inlet = take(streams * M);
    rows_.up_runs = take(3 * M * M);
    rows_.up_carries = take(M * M);
    rows_.down_runs = take(3 * M * M);
    rows_.down_carries = take(M * M);
    rows_.top = take(1);
    rows_.toe = take(1);
    rows_.inner_from_old = take(streams);
    rows_.inner_from_outer = take(streams);
    rows_.outer_from_old = take(streams);
    rows_.outer_from_inner = take(streams);
    rows_.outer_from_far = take(1);
    rows_.inner_from_streams = take(streams * streams);
    rows_.conductance = take(1);
    rows_.wall_response = take(1);
  }
  factors_ = {.row = row,
              .first = layers.first(),
              .end = layers.first() + layers.size(),
              .flows = layers.flows(),
              .response = rows_.response,
              .from_below = rows_.from_below,
              .from_inlet = rows_.from_inlet,
              .up_runs = rows_.up_runs,
              .up_carries = rows_.up_carries,
              .down_runs = rows_.down_runs,
              .down_carries = rows_.down_carries,
              .top = rows_.top,
              .toe = rows_.toe,
              .inner_from_old = rows_.inner_from_old,
              .inner_from_outer = rows_.inner_from_outer,
              .outer_from_old = rows_.outer_from_old,
              .outer_from_inner = rows_.outer_from_inner,
              .outer_from_far = rows_.outer_from_far,
              .inner_from_streams = rows_.inner_from_streams,
              .conductance = rows_.conductance,
              .wall_response = rows_.wall_response};
  for (std::size_t n = 0; n < layers.size(); ++n) lay_out(layers[n], layers.first() + n, layers.flows());
  rows_.top[factors_.first] = rows_.toe[factors_.end - 1] = 1;
  if (layers.flows()) lay_out_runs<M>(lanes);
}

/// Products of the factors from layer to layer within a register's layers: of 1, 2, 4 of them, and of all from its edge
/// on. Layers without a bore pass nothing on.
template <int M>
void PackedBore::lay_out_runs(std::size_t lanes) {
  constexpr std::size_t square = M * M;
  const std::size_t row = factors_.row, from = factors_.first / lanes * lanes,
                    to = (factors_.end + lanes - 1) / lanes * lanes;
  const auto matrix = [&](const double* rows, std::size_t k) {
    Square<M> result;
    for (int p = 0; p < M; ++p) {
      for (int q = 0; q < M; ++q) result(p, q) = rows[static_cast<std::size_t>(p * M + q) * row + k];
    }
    return result;
  };
  const auto put = [&](const Square<M>& value, double* rows, std::size_t k) {
    for (int p = 0; p < M; ++p) {
      for (int q = 0; q < M; ++q) rows[static_cast<std::size_t>(p * M + q) * row + k] = value(p, q);
    }
  };
  const double *up = rows_.from_below + square * row, *down = rows_.from_inlet;
  std::copy(up, up + square * row, rows_.up_runs);
  std::copy(down, down + square * row, rows_.down_runs);
  for (std::size_t by = 1, level = 0; 2 * by < lanes; by *= 2, ++level) {
    double *ups = rows_.up_runs + level * square * row, *downs = rows_.down_runs + level * square * row;
    for (std::size_t k = from; k < to; ++k) {
      const bool more_below = k % lanes + by < lanes, more_above = k % lanes >= by;
      if (more_below) put(matrix(ups, k) * matrix(ups, k + by), ups + square * row, k);
      if (more_above) put(matrix(downs, k) * matrix(downs, k - by), downs + square * row, k);
    }
  }
  for (std::size_t k = from; k < to; ++k) {
    const bool top = k % lanes == 0;
    put(top ? matrix(down, k) : Square<M>(matrix(down, k) * matrix(rows_.down_carries, k - 1)), rows_.down_carries, k);
  }
  for (std::size_t k = to; k-- > from;) {
    const bool bottom = k % lanes == lanes - 1;
    put(bottom ? matrix(up, k) : Square<M>(matrix(up, k) * matrix(rows_.up_carries, k + 1)), rows_.up_carries, k);
  }
}

/// A layer's rows of the kernels' factors (see bore_kernels.cpp): with V = inverse of the streams' block and
/// n_m = L/R_inner,m V gives_m^T, a stream per temperature of mode m's inner node at M = 0,
///   R = (V F | n inner_from_old, n inner_from_outer outer_from_old, of each mode | n_0 inner_from_outer
///   outer_from_far) B = V (-P_du; W - P_uu),   A = (d per d_in; G),   inner_from_streams = inner_from_fluid reads/2.
template <int M>
void PackedBore::lay_out(const BoreLayer<M>& layer, std::size_t k, bool flows) {
  constexpr int streams = 2 * M, inputs = 3 * streams;
  const std::size_t row = factors_.row;
  const auto at = [&](double* rows, int which) -> double& { return rows[static_cast<std::size_t>(which) * row + k]; };
  // A stream per heat that leaves the inner node of a mode.
  Square<streams> per_node = layer.inverse * layer.gives.transpose();
  for (int m = 0; m < streams; ++m) per_node.col(m) *= layer.length * layer.chain[m].conductance;
  for (int s = 0; s < streams; ++s) {
    for (int t = 0; t < streams; ++t) at(rows_.response, s * (inputs + 1) + t) = layer.inverse(s, t) * layer.storage(t);
    for (int m = 0; m < streams; ++m) {
      const Chain& chain = layer.chain[m];
      const int node = s * (inputs + 1) + streams + 2 * m;
      at(rows_.response, node) = per_node(s, m) * chain.inner_from_old;
      at(rows_.response, node + 1) = per_node(s, m) * chain.inner_from_outer * chain.outer_from_old;
    }
    const Chain& even = layer.chain[0];
    at(rows_.response, s * (inputs + 1) + inputs) = per_node(s, 0) * even.inner_from_outer * even.outer_from_far;
  }
  if (flows) {
    const Eigen::Matrix<double, streams, M> from_below =
        layer.inverse.template rightCols<M>() * layer.counter - layer.inverse.template leftCols<M>() * layer.mixed;
    for (int s = 0; s < streams; ++s) {
      for (int p = 0; p < M; ++p) {
        at(rows_.from_below, s * M + p) = from_below(s, p);
        at(rows_.from_inlet, s * M + p) = s < M ? layer.down_from_inlet(s, p) : layer.gain(s - M, p);
      }
    }
  }
  for (int m = 0; m < streams; ++m) {
    const Chain& chain = layer.chain[m];
    if (!chain.stores) continue;  // no part of the state: stays zero
    at(rows_.inner_from_old, m) = chain.inner_from_old;
    at(rows_.inner_from_outer, m) = chain.inner_from_outer;
    at(rows_.outer_from_old, m) = chain.outer_from_old;
    at(rows_.outer_from_inner, m) = chain.outer_from_inner;
    // Streams exchange at the mean of what enters and what leaves.
    for (int s = 0; s < streams; ++s)
      at(rows_.inner_from_streams, m * streams + s) = chain.inner_from_fluid / 2 * layer.reads(m, s);
  }
  rows_.outer_from_far[k] = layer.chain[0].outer_from_far;
  rows_.conductance[k] = layer.fraction * layer.inverse_outer;
  rows_.wall_response[k] = layer.wall_response;
}

}  // namespace stillground::march::fused
