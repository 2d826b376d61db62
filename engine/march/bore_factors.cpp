#include "engine/march/bore_factors.hpp"

#include <Eigen/Core>
#include <Eigen/LU>
#include <vector>

namespace stillground::march {

namespace {

template <int M>
using Square = Eigen::Matrix<double, M, M>;
template <int M>
using Column = Eigen::Matrix<double, M, 1>;

/// A mode's two nodes within a stage: fluid M -> inner node -> outer node -> far end E, eliminated outwards to inwards:
///   T_o = T_o(M = 0) + back T_i,   T_i = T_i(M = 0) + in M.
struct Chain {
  double keeps_outer = 0, outward = 0, back = 0;  ///< the outer node's parts of its old value, of E, of T_i
  double keeps_inner = 0, in = 0, forth = 0;      ///< the inner node's of its old value, of M, of T_o(T_i = 0)
  double conductance = 0;                         ///< fluid to inner node [W/(m K)]
  bool stores = false;                            ///< nodes that do not are no part of the state

  Chain() = default;
  Chain(const bore::Mode& mode, double beyond, double kappa);  ///< `beyond`: outer node to far end [K m/W]

  double outer_alone(double rhs_outer, double far_end) const { return keeps_outer * rhs_outer + outward * far_end; }
  double inner_alone(double rhs_inner, double outer) const { return keeps_inner * rhs_inner + forth * outer; }
  double seen() const { return conductance * (1 - in); }  ///< conductance that the fluid meets
};

Chain::Chain(const bore::Mode& mode, double beyond, double kappa)
    : conductance(1 / mode.inner), stores(mode.inner_capacity > 0) {
  const double first = kappa / mode.inner, second = kappa / mode.middle, third = kappa / beyond;
  const double outer = mode.outer_capacity + second + third;
  keeps_outer = mode.outer_capacity / outer;
  outward = third / outer;
  back = second / outer;
  const double inner = mode.inner_capacity + first + second * (1 - back);
  keeps_inner = mode.inner_capacity / inner;
  in = first / inner;
  forth = second / inner;
}

/// M passes: streams 0..M-1 go down, M..2M-1 up. Work rows, each row() long: the streams' sources (2M), the part of
/// each pass going down and of each going up that does not depend on the inlet, the far field.
template <int M>
class Factors final : public BoreFactors::Passes {
 public:
  static constexpr int streams = 2 * M;

  Factors(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
          double kappa);

  double gain() const override { return gain_; }
  double eliminate(const double* rhs, const double* y, const double* ambient, std::span<double> work) const override;
  void substitute(double inlet, const double* rhs, double* y, std::span<double> work, double* wall_heat) const override;

 private:
  struct Layer {
    const bore::Network* network = nullptr;
    Chain chain[streams];
    double inverse_outer = 0;  // 1/(R_outer + wall to first node + fraction * wall response)
    double length = 0;         // of bore in this layer [m]
    double fraction = 0;
    double wall_response = 0;
    Column<streams> storage;    // F [W/K]
    Square<streams> inverse;    // of the streams' block
    Square<M> down_from_inlet;  // d per d_in
    Square<M> gain;             // u per d_in
    Square<M> mixed;            // P_du
    Square<M> counter;          // W - P_uu
  };

  double heat_of(const Layer& layer, std::size_t stream, const double (&parts)[streams]) const;
  void standing_streams(const Layer& layer, std::size_t k, const double* rhs, const double* work, double* y) const;
  void finish_layer(const Layer& layer, std::size_t k, const Column<streams>& mean, const double* rhs,
                    const double* far, double* y, double* wall_heat) const;

  /// Inlets of the passes: the first from the field, the second from what the first brought up.
  Column<M> inlets(double inlet, const double* work) const;

  bool flows_;
  std::size_t first_, row_;
  double gain_ = 0;
  std::vector<bore::Network> networks_;
  std::vector<Layer> layers_;  // from the bore's first layer down
};

template <int M>
Factors<M>::Factors(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
                    double kappa)
    : flows_(regime.heat_rate > 0),
      first_(group.first),
      row_(problem.row()),
      networks_(regime.networks.begin() + static_cast<std::ptrdiff_t>(group.first),
                regime.networks.begin() + static_cast<std::ptrdiff_t>(group.past)),
      layers_(group.past - group.first) {
  Square<M> gain_below = Square<M>::Identity();  // at the toe what came down goes up
  for (std::size_t n = layers_.size(); n-- > 0;) {
    const std::size_t k = first_ + n;
    const bore::Network& net = networks_[n];
    Layer& layer = layers_[n];
    layer.network = &net;
    layer.fraction = group.fraction[k];
    layer.length = layer.fraction * problem.grid.height(k);
    layer.wall_response = radial.wall_response()[k];
    const double outer = net.modes[0].outer + wall_to_first_node(problem.grid, problem.grid.solid[k].conductivity) +
                         layer.fraction * layer.wall_response;
    layer.inverse_outer = 1 / outer;
    Square<streams> exchange = Square<streams>::Zero();  // A
    for (int m = 0; m < streams; ++m) {
      const bore::Mode& mode = net.modes[static_cast<std::size_t>(m)];
      layer.chain[m] = Chain(mode, m == 0 ? outer : mode.outer, kappa);
      for (int s = 0; s < streams; ++s) {
        for (int t = 0; t < streams; ++t) {
          exchange(s, t) +=
              mode.gives[static_cast<std::size_t>(s)] * layer.chain[m].seen() * mode.reads[static_cast<std::size_t>(t)];
        }
      }
    }
    for (int s = 0; s < streams; ++s) {
      layer.storage(s) = net.capacity[static_cast<std::size_t>(s)] * layer.length / kappa;
    }
    Square<streams> block = layer.storage.asDiagonal();
    if (!flows_) {
      layer.inverse = (block + layer.length * exchange).inverse();
      continue;
    }
    const Square<streams> p = layer.length / 2 * exchange;
    const Square<M> w = regime.heat_rate * Square<M>::Identity();
    const Square<M> p_dd = p.template topLeftCorner<M, M>(), p_du = p.template topRightCorner<M, M>();
    const Square<M> p_ud = p.template bottomLeftCorner<M, M>(), p_uu = p.template bottomRightCorner<M, M>();
    block += p;
    block.diagonal().array() += regime.heat_rate;
    block.template topLeftCorner<M, M>() += p_du * gain_below;
    block.template bottomLeftCorner<M, M>() += (p_uu - w) * gain_below;
    layer.inverse = block.inverse();
    layer.mixed = p_du;
    layer.counter = w - p_uu;
    Eigen::Matrix<double, streams, M> from_inlet;
    from_inlet.template topRows<M>() = w - p_dd;
    from_inlet.template bottomRows<M>() = -p_ud;
    const Eigen::Matrix<double, streams, M> answer = layer.inverse * from_inlet;
    layer.down_from_inlet = answer.template topRows<M>();
    layer.gain = answer.template bottomRows<M>();
    gain_below = layer.gain;
  }
  if (!flows_) return;
  gain_ = gain_below(M - 1, 0);
  if constexpr (M == 2) gain_ += gain_below(1, 1) * gain_below(0, 0) / (1 - gain_below(0, 1));
}

template <int M>
double Factors<M>::heat_of(const Layer& layer, std::size_t stream, const double (&parts)[streams]) const {
  double sum = 0;
  for (std::size_t m = 0; m < streams; ++m) {
    sum += layer.network->modes[m].gives[stream] * layer.chain[m].conductance * parts[m];
  }
  return sum;
}

template <int M>
double Factors<M>::eliminate(const double* rhs, const double* y, const double* ambient, std::span<double> work) const {
  double* source = work.data();
  double* part = work.data() + streams * row_;
  double* far = work.data() + 2 * streams * row_;
  const double* theta = y + 3 * streams * row_;

  for (std::size_t n = 0; n < layers_.size(); ++n) {
    const std::size_t k = first_ + n;
    const Layer& layer = layers_[n];
    far[k] = ambient[k] + theta[k];
    double nodes[streams];
    for (std::size_t m = 0; m < streams; ++m) {
      const std::size_t inner = (streams + 2 * m) * row_ + k;
      const double outer = layer.chain[m].outer_alone(rhs[inner + row_], m == 0 ? far[k] : 0.0);
      nodes[m] = layer.chain[m].inner_alone(rhs[inner], outer);
    }
    for (std::size_t s = 0; s < streams; ++s) source[s * row_ + k] = layer.length * heat_of(layer, s, nodes);
  }
  if (!flows_) return 0;

  Column<M> below = Column<M>::Zero();  // u_in = gain d + below
  for (std::size_t n = layers_.size(); n-- > 0;) {
    const std::size_t k = first_ + n;
    const Layer& layer = layers_[n];
    Column<streams> right;
    for (int s = 0; s < streams; ++s) {
      const auto at = static_cast<std::size_t>(s) * row_ + k;
      right(s) = layer.storage(s) * rhs[at] + source[at];
    }
    right.template head<M>() -= layer.mixed * below;
    right.template tail<M>() += layer.counter * below;
    const Column<streams> answer = layer.inverse * right;
    for (int s = 0; s < streams; ++s) part[static_cast<std::size_t>(s) * row_ + k] = answer(s);
    below = answer.template tail<M>();
  }
  if constexpr (M == 1) return below(0);
  const Square<M>& top = layers_.front().gain;
  return below(M - 1) + top(M - 1, M - 1) * below(0) / (1 - top(0, M - 1));
}

template <int M>
Column<M> Factors<M>::inlets(double inlet, const double* work) const {
  Column<M> in;
  in(0) = inlet;
  if constexpr (M == 2) {
    const Square<M>& top = layers_.front().gain;
    const double offset = work[(streams + M) * row_ + first_];
    in(1) = (top(0, 0) * inlet + offset) / (1 - top(0, 1));
  }
  return in;
}

template <int M>
void Factors<M>::standing_streams(const Layer& layer, std::size_t k, const double* rhs, const double* work,
                                  double* y) const {
  Column<streams> right;
  for (int s = 0; s < streams; ++s) {
    const auto at = static_cast<std::size_t>(s) * row_ + k;
    right(s) = layer.storage(s) * rhs[at] + work[at];
  }
  const Column<streams> answer = layer.inverse * right;
  for (int s = 0; s < streams; ++s) y[static_cast<std::size_t>(s) * row_ + k] = answer(s);
}

template <int M>
void Factors<M>::finish_layer(const Layer& layer, std::size_t k, const Column<streams>& mean, const double* rhs,
                              const double* far, double* y, double* wall_heat) const {
  for (std::size_t m = 0; m < streams; ++m) {
    double fluid = 0;
    for (std::size_t s = 0; s < streams; ++s) {
      fluid += layer.network->modes[m].reads[s] * mean(static_cast<Eigen::Index>(s));
    }
    const Chain& chain = layer.chain[m];
    if (!chain.stores) continue;
    const std::size_t inner = (streams + 2 * m) * row_ + k, outer = inner + row_;
    const double alone = chain.outer_alone(rhs[outer], m == 0 ? far[k] : 0.0);  // rhs may be y
    y[inner] = chain.inner_alone(rhs[inner], alone) + chain.in * fluid;
    y[outer] = alone + chain.back * y[inner];
  }
  wall_heat[k] = layer.fraction * (y[(streams + 1) * row_ + k] - far[k]) * layer.inverse_outer;
  y[3 * streams * row_ + k] += layer.wall_response * wall_heat[k];
}

template <int M>
void Factors<M>::substitute(double inlet, const double* rhs, double* y, std::span<double> work,
                            double* wall_heat) const {
  const double* part = work.data() + streams * row_;
  const double* far = work.data() + 2 * streams * row_;
  // The nodes' right side may be overwritten with them; the streams' no longer matters.
  if (flows_) {
    Column<M> in = inlets(inlet, work.data());
    for (std::size_t n = 0; n < layers_.size(); ++n) {
      const std::size_t k = first_ + n;
      const Column<M> up = layers_[n].gain * in, down = layers_[n].down_from_inlet * in;
      for (int p = 0; p < M; ++p) {
        const auto d = static_cast<std::size_t>(p) * row_ + k, u = static_cast<std::size_t>(p + M) * row_ + k;
        in(p) = y[d] = part[d] + down(p);
        y[u] = part[u] + up(p);
      }
    }
  }
  Column<M> above = flows_ ? inlets(inlet, work.data()) : Column<M>::Zero();
  for (std::size_t n = 0; n < layers_.size(); ++n) {
    const std::size_t k = first_ + n;
    if (!flows_) standing_streams(layers_[n], k, rhs, work.data(), y);
    Column<streams> mean;
    for (int p = 0; p < M; ++p) {
      const auto d = static_cast<std::size_t>(p) * row_ + k, u = static_cast<std::size_t>(p + M) * row_ + k;
      const double below = n + 1 < layers_.size() ? y[u + 1] : y[d];
      mean(p) = flows_ ? (above(p) + y[d]) / 2 : y[d];
      mean(p + M) = flows_ ? (below + y[u]) / 2 : y[u];
      above(p) = y[d];
    }
    finish_layer(layers_[n], k, mean, rhs, far, y, wall_heat);
  }
}

}  // namespace

BoreFactors::BoreFactors(const Problem& problem, const Group& group, const FlowRegime& regime,
                         const RadialFactors& radial, double kappa) {
  if (problem.passes == 1) {
    passes_ = std::make_unique<Factors<1>>(problem, group, regime, radial, kappa);
  } else {
    passes_ = std::make_unique<Factors<2>>(problem, group, regime, radial, kappa);
  }
}

}  // namespace stillground::march
