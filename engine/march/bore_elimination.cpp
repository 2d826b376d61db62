#include "engine/march/bore_elimination.hpp"

#include "engine/march/bore_layers.hpp"

namespace stillground::march {

namespace {

/// M passes: streams 0..M-1 go down, M..2M-1 up. Work rows, each row() long: the streams' sources (2M), the part of
/// each pass going down and of each going up that does not depend on the inlet, the far field.
template <int M>
class Factors final : public BoreElimination::Passes {
 public:
  static constexpr int streams = 2 * M;

  Factors(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
          double kappa);

  double gain() const override { return layers_.gain(); }
  double eliminate(const double* rhs, const double* y, const double* ambient, std::span<double> work) const override;
  void substitute(double inlet, const double* rhs, double* y, std::span<double> work, double* wall_heat) const override;

 private:
  using Layer = BoreLayer<M>;

  double heat_of(const Layer& layer, std::size_t stream, const double (&parts)[streams]) const;
  void stagnant_streams(const Layer& layer, std::size_t k, const double* rhs, const double* work, double* y) const;
  void finish_layer(const Layer& layer, std::size_t k, const Column<streams>& mean, const double* rhs,
                    const double* far, double* y, double* wall_heat) const;

  /// Inlets of the passes; `work` as eliminate left it.
  Column<M> inlets(double inlet, const double* work) const {
    return layers_.inlets(inlet, work[(streams + M) * row_ + first_]);
  }

  std::size_t first_, row_;
  BoreLayers<M> layers_;
};

template <int M>
Factors<M>::Factors(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
                    double kappa)
    : first_(group.first), row_(StateLayout(problem).row()) {
  layers_.make(problem, group, regime, radial.wall_response(), kappa);
}

/// sum_m gives_ms T_m/R_inner,m: heat that a stream is given per metre by nodes at T_m.
template <int M>
double Factors<M>::heat_of(const Layer& layer, std::size_t stream, const double (&parts)[streams]) const {
  double sum = 0;
  for (std::size_t m = 0; m < streams; ++m) {
    sum += layer.gives(static_cast<int>(m), static_cast<int>(stream)) * layer.chain[m].conductance * parts[m];
  }
  return sum;
}

/// E = T0 + N + e_0;   s = L sum_m gives_m T_i,m(M = 0)/R_inner;   then from the toe up, g = 0 below it,
///   (d, u) = inverse (F (d, u)_rhs + s + (-P_du, W - P_uu) g),   g <- u;
/// what is found is kept as the part that does not depend on the inlet.
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
  if (!layers_.flows()) return 0;

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
    const Column<streams> solved = layer.inverse * right;
    for (int s = 0; s < streams; ++s) part[static_cast<std::size_t>(s) * row_ + k] = solved(s);
    below = solved.template tail<M>();
  }
  return layers_.outlet(below);
}

/// T = (F + L A)^-1 (F T_rhs + s).
template <int M>
void Factors<M>::stagnant_streams(const Layer& layer, std::size_t k, const double* rhs, const double* work,
                                  double* y) const {
  Column<streams> right;
  for (int s = 0; s < streams; ++s) {
    const auto at = static_cast<std::size_t>(s) * row_ + k;
    right(s) = layer.storage(s) * rhs[at] + work[at];
  }
  const Column<streams> solved = layer.inverse * right;
  for (int s = 0; s < streams; ++s) y[static_cast<std::size_t>(s) * row_ + k] = solved(s);
}

/// M_m = sum_s reads_ms mean_s;   T_i = T_i(M = 0) + inner_from_fluid M,   T_o = T_o(T_i = 0) + outer_from_inner T_i;
/// q_w = f (T_o - E)/outer of mode 0,   theta_0 = e_0 + wall_response q_w.
template <int M>
void Factors<M>::finish_layer(const Layer& layer, std::size_t k, const Column<streams>& mean, const double* rhs,
                              const double* far, double* y, double* wall_heat) const {
  for (std::size_t m = 0; m < streams; ++m) {
    double fluid = 0;
    for (std::size_t s = 0; s < streams; ++s) {
      fluid += layer.reads(static_cast<int>(m), static_cast<int>(s)) * mean(static_cast<int>(s));
    }
    const Chain& chain = layer.chain[m];
    if (!chain.stores) continue;
    const std::size_t inner = (streams + 2 * m) * row_ + k, outer = inner + row_;
    const double alone = chain.outer_alone(rhs[outer], m == 0 ? far[k] : 0.0);  // rhs may be y
    y[inner] = chain.inner_alone(rhs[inner], alone) + chain.inner_from_fluid * fluid;
    y[outer] = alone + chain.outer_from_inner * y[inner];
  }
  wall_heat[k] = layer.fraction * (y[(streams + 1) * row_ + k] - far[k]) * layer.inverse_outer;
  y[3 * streams * row_ + k] += layer.wall_response * wall_heat[k];
}

/// From the top down: d = part + d_per_inlet d_in, u = part + G d_in, the next layer's d_in = d. Then every layer by
/// itself.
template <int M>
void Factors<M>::substitute(double inlet, const double* rhs, double* y, std::span<double> work,
                            double* wall_heat) const {
  const double* part = work.data() + streams * row_;
  const double* far = work.data() + 2 * streams * row_;
  // The nodes' right side may be overwritten with them; the streams' no longer matters.
  if (layers_.flows()) {
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
  Column<M> above = layers_.flows() ? inlets(inlet, work.data()) : Column<M>::Zero();
  for (std::size_t n = 0; n < layers_.size(); ++n) {
    const std::size_t k = first_ + n;
    if (!layers_.flows()) stagnant_streams(layers_[n], k, rhs, work.data(), y);
    Column<streams> mean;
    for (int p = 0; p < M; ++p) {
      const auto d = static_cast<std::size_t>(p) * row_ + k, u = static_cast<std::size_t>(p + M) * row_ + k;
      const double below = n + 1 < layers_.size() ? y[u + 1] : y[d];
      mean(p) = layers_.flows() ? (above(p) + y[d]) / 2 : y[d];
      mean(p + M) = layers_.flows() ? (below + y[u]) / 2 : y[u];
      above(p) = y[d];
    }
    finish_layer(layers_[n], k, mean, rhs, far, y, wall_heat);
  }
}

}  // namespace

BoreElimination::BoreElimination(const Problem& problem, const Group& group, const FlowRegime& regime,
                                 const RadialFactors& radial, double kappa) {
  if (problem.passes == 1) {
    passes_ = std::make_unique<Factors<1>>(problem, group, regime, radial, kappa);
  } else {
    passes_ = std::make_unique<Factors<2>>(problem, group, regime, radial, kappa);
  }
}

}  // namespace stillground::march
