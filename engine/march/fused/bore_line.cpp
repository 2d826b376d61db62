#include "engine/march/fused/bore_line.hpp"

namespace stillground::march::fused {

void BoreLine::make(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
                    double kappa) {
  passes_ = problem.passes;
  if (passes_ == 1) {
    one_.make(problem, group, regime, radial, kappa);
    lay_out(problem, one_);
  } else {
    two_.make(problem, group, regime, radial, kappa);
    lay_out(problem, two_);
  }
}

double BoreLine::outlet(const std::array<double, 2>& up) const {
  return passes_ == 1 ? up[0] : two_.outlet({up[0], up[1]});
}

std::array<double, 2> BoreLine::inlets(double inlet, const std::array<double, 2>& up) const {
  return {inlet, passes_ == 1 ? 0.0 : two_.inlets(inlet, up[0])(1)};
}

template <int M>
void BoreLine::lay_out(const Problem& problem, const BoreLayers<M>& layers) {
  constexpr std::size_t streams = 2 * M, inputs = 3 * streams;
  const std::size_t row = problem.row();
  if (memory_.empty()) {
    constexpr std::size_t rows = streams * (inputs + 1) + 2 * streams * M + 4 * streams + streams * streams + 3;
    memory_.assign(rows * row, 0.0);  // outside the bore, and in the padding, they stay zero
    double* at = memory_.data();
    const auto take = [&](std::size_t count) {
      double* taken = at;
      at += count * row;
      return taken;
    };
    rows_.answer = take(streams * (inputs + 1));
    rows_.from_below = take(streams * M);
    rows_.from_inlet = take(streams * M);
    rows_.keeps_inner = take(streams);
    rows_.forth = take(streams);
    rows_.keeps_outer = take(streams);
    rows_.back = take(streams);
    rows_.outward = take(1);
    rows_.from_streams = take(streams * streams);
    rows_.conductance = take(1);
    rows_.wall_response = take(1);
  }
  factors_ = {row,
              layers.first(),
              layers.first() + layers.size(),
              layers.flows(),
              rows_.answer,
              rows_.from_below,
              rows_.from_inlet,
              rows_.keeps_inner,
              rows_.forth,
              rows_.keeps_outer,
              rows_.back,
              rows_.outward,
              rows_.from_streams,
              rows_.conductance,
              rows_.wall_response};
  for (std::size_t n = 0; n < layers.size(); ++n) lay_out(layers[n], layers.first() + n, layers.flows());
}

template <int M>
void BoreLine::lay_out(const BoreLayer<M>& layer, std::size_t k, bool flows) {
  constexpr int streams = 2 * M, inputs = 3 * streams;
  const std::size_t row = factors_.row;
  const auto at = [&](double* rows, int which) -> double& { return rows[static_cast<std::size_t>(which) * row + k]; };
  // A stream per heat that leaves the inner node of a mode.
  Square<streams> per_node = layer.inverse * layer.gives.transpose();
  for (int m = 0; m < streams; ++m) per_node.col(m) *= layer.length * layer.chain[m].conductance;
  for (int s = 0; s < streams; ++s) {
    for (int t = 0; t < streams; ++t) at(rows_.answer, s * (inputs + 1) + t) = layer.inverse(s, t) * layer.storage(t);
    for (int m = 0; m < streams; ++m) {
      const Chain& chain = layer.chain[m];
      const int node = s * (inputs + 1) + streams + 2 * m;
      at(rows_.answer, node) = per_node(s, m) * chain.keeps_inner;
      at(rows_.answer, node + 1) = per_node(s, m) * chain.forth * chain.keeps_outer;
    }
    const Chain& even = layer.chain[0];
    at(rows_.answer, s * (inputs + 1) + inputs) = per_node(s, 0) * even.forth * even.outward;
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
    at(rows_.keeps_inner, m) = chain.keeps_inner;
    at(rows_.forth, m) = chain.forth;
    at(rows_.keeps_outer, m) = chain.keeps_outer;
    at(rows_.back, m) = chain.back;
    // Streams exchange at the mean of what enters and what leaves.
    for (int s = 0; s < streams; ++s) at(rows_.from_streams, m * streams + s) = chain.in / 2 * layer.reads(m, s);
  }
  rows_.outward[k] = layer.chain[0].outward;
  rows_.conductance[k] = layer.fraction * layer.inverse_outer;
  rows_.wall_response[k] = layer.wall_response;
}

}  // namespace stillground::march::fused
