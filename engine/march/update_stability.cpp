#include "engine/march/update_stability.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "engine/march/radial.hpp"

namespace stillground::march {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double margin = 1.25;  // on the coupling

/// w[s][i] = largest over groups a of sum over b of weight(a, b, i), cells i of shell s: what a bore at its inmost
/// place sees of neighbours that all do the same. For real weights of one sign the largest eigenvalue of the coupling
/// is no larger (Gershgorin's circles), and where all bores are equal it is just that.
std::vector<VectorXd> row_sums(const Problem& problem) {
  const auto nr = static_cast<Index>(problem.nr());
  std::vector<VectorXd> sums;
  for (const auto& shell : problem.coupling.shells()) {
    VectorXd most = VectorXd::Zero(nr);
    for (std::size_t a = 0; a < problem.groups.size(); ++a) {
      VectorXd sum = VectorXd::Zero(nr);
      for (const auto& term : problem.coupling.terms(a, shell)) sum(term.cell) += term.weight;
      most = a == 0 ? sum : VectorXd(most.cwiseMax(sum));
    }
    sums.push_back(most);
  }
  return sums;
}

/// One layer of one bore while its fluid decay its temperature: what flows past all layers of all bores is their mean,
/// which a swing from layer to layer or from bore to bore leaves alone. Rings and the bore's own nodes, y, per metre:
///   C y' = -K y + b A,   A the neighbours' sum at the wall,
/// K symmetric: conductances between rings, from the innermost through the wall to the outer node, on to the inner one
/// and to the fluid at 0. With S = C^-1/2 K C^-1/2 = V L V^T every mode decays by itself.
class Layer {
 public:
  Layer(const ground::Grid& grid, const model::Solid& solid, const bore::Mode& even)
      : nr_(static_cast<Index>(grid.nr())), size_(even.inner_capacity > 0 ? nr_ + 2 : nr_) {
    VectorXd capacity(size_);
    MatrixXd k = MatrixXd::Zero(size_, size_);
    const auto link = [&](Index a, Index b, double conductance) {
      k(a, a) += conductance;
      k(b, b) += conductance;
      k(a, b) -= conductance;
      k(b, a) -= conductance;
    };
    for (Index i = 0; i < nr_; ++i) {
      const auto ring = static_cast<std::size_t>(i);
      capacity(i) = solid.heat_capacity * grid.ring_area(ring);
      if (i + 1 < nr_) link(i, i + 1, solid.conductivity * grid.unit_conductance(ring));
    }
    VectorXd force = VectorXd::Zero(size_);
    const double to_node = wall_to_first_node(grid, solid.conductivity);
    if (size_ == nr_) {
      const double wall = 1 / (even.resistance() + to_node);
      k(0, 0) += wall;
      force(0) = -wall;
    } else {
      const Index outer = nr_, inner = nr_ + 1;
      const double wall = 1 / (even.outer + to_node);
      capacity(outer) = even.outer_capacity;
      capacity(inner) = even.inner_capacity;
      link(0, outer, wall);
      link(outer, inner, 1 / even.middle);
      k(inner, inner) += 1 / even.inner;
      force(0) = -wall;
      force(outer) = wall;
    }
    const VectorXd root = capacity.cwiseSqrt().cwiseInverse();
    const Eigen::SelfAdjointEigenSolver<MatrixXd> solver(root.asDiagonal() * k * root.asDiagonal());
    rates_ = solver.eigenvalues();
    shapes_ = root.asDiagonal() * solver.eigenvectors();  // y = shapes x
    force_ = shapes_.transpose() * force;
  }

  Index size() const { return size_; }

  /// What reads sum of w_i theta_i off the modes.
  VectorXd read(const VectorXd& w) const { return shapes_.topRows(nr_).transpose() * w; }

  /// x after `time` = decay x + by_held A + by_rising dA/dt, A = A(0) + dA/dt t:
  ///   decay = e^-Lt,  by_held = (1 - decay)/L f,  by_rising = (t - (1 - decay)/L)/L f.
  void over(double time, VectorXd& decay, VectorXd& by_held, VectorXd& by_rising) const {
    decay = (-time * rates_).array().exp();
    const VectorXd held = (-(-time * rates_).array().expm1() / rates_.array()).matrix();
    by_held = held.cwiseProduct(force_);
    by_rising = ((time - held.array()) / rates_.array()).matrix().cwiseProduct(force_);
  }

 private:
  Index nr_, size_;
  VectorXd rates_, force_;
  MatrixXd shapes_;
};

/// Growth in one layer. The state is the modes' amplitudes x and each shell's sum and rate, which march/ambient keeps.
/// At update n the shells with `every` | n read
///   sum' = w.theta,  rate' = (sum' - sum)/every   [per update R];
/// then over R: A = sum over shells of sum + (n mod every + t/R) rate. All shells have been formed together
/// again after the longest of them: the product of so many maps is the period's, its eigenvalues of largest modulus the
/// growth (Floquet's multipliers).
double growth(const Layer& layer, const std::vector<field::Coupling::Shell>& shells, const std::vector<VectorXd>& sums,
              double interval, double gain) {
  const Index modes = layer.size(), size = modes + 2 * static_cast<Index>(shells.size());
  VectorXd decay, by_held, by_rising;
  layer.over(interval, decay, by_held, by_rising);
  std::vector<VectorXd> reads;
  for (const VectorXd& w : sums) reads.push_back(gain * layer.read(w));
  MatrixXd period = MatrixXd::Identity(size, size);
  const long updates = shells.back().every;
  for (long n = 0; n < updates; ++n) {
    for (std::size_t s = 0; s < shells.size(); ++s) {
      if (n % shells[s].every != 0) continue;
      const Index sum = modes + 2 * static_cast<Index>(s), rate = sum + 1;
      const Eigen::RowVectorXd now = reads[s].transpose() * period.topRows(modes);
      period.row(rate) = (now - period.row(sum)) / static_cast<double>(shells[s].every);
      period.row(sum) = now;
    }
    Eigen::RowVectorXd start = Eigen::RowVectorXd::Zero(size), rise = start;
    for (std::size_t s = 0; s < shells.size(); ++s) {
      const Index sum = modes + 2 * static_cast<Index>(s), rate = sum + 1;
      start += period.row(sum) + static_cast<double>(n % shells[s].every) * period.row(rate);
      rise += period.row(rate) / interval;
    }
    period.topRows(modes) = (decay.asDiagonal() * period.topRows(modes) + by_held * start + by_rising * rise).eval();
  }
  const double radius = Eigen::EigenSolver<MatrixXd>(period, false).eigenvalues().cwiseAbs().maxCoeff();
  return std::pow(radius, 1 / static_cast<double>(updates));
}

/// Solids of the layers with a bore in them, each once, with the even mode of the network there.
std::vector<Layer> layers_of(const Problem& problem, const FlowRegime& regime) {
  std::vector<model::Solid> seen;
  std::vector<Layer> layers;
  for (std::size_t k = 0; k < problem.nz(); ++k) {
    const model::Solid& solid = problem.grid.solid[k];
    const auto same = [&](const model::Solid& other) {
      return other.conductivity == solid.conductivity && other.heat_capacity == solid.heat_capacity;
    };
    const auto holds = [&](const Group& group) { return group.first <= k && k < group.end; };
    if (std::any_of(seen.begin(), seen.end(), same) ||
        std::none_of(problem.groups.begin(), problem.groups.end(), holds)) {
      continue;
    }
    seen.push_back(solid);
    layers.emplace_back(problem.grid, solid, regime.network(k).modes[0]);
  }
  return layers;
}

/// What is felt of a swing from update to update, of period 2 R, at a distance r: it dies away as
/// e^(-r sqrt(pi/(2 alpha R))) (Carslaw & Jaeger 1959, 2.6 [from memory]). Where all neighbours' add up to less than a
/// hundredth nothing can feed itself.
bool out_of_reach(const Problem& problem, const std::vector<VectorXd>& sums, double interval) {
  double alpha = 0, felt = 0;
  for (const model::Solid& solid : problem.grid.solid) alpha = std::max(alpha, solid.diffusivity());
  const auto& shells = problem.coupling.shells();
  for (std::size_t s = 0; s < shells.size(); ++s) {
    const double wave = std::sqrt(std::numbers::pi / (2 * alpha * interval * static_cast<double>(shells[s].every)));
    for (std::size_t i = shells[s].first; i < shells[s].end; ++i) {
      felt += std::abs(sums[s](static_cast<Index>(i))) * std::exp(-wave * problem.grid.r[i]);
    }
  }
  return felt < 0.01;
}

}  // namespace

double update_growth(const Problem& problem, const FlowRegime& regime, double interval, double gain) {
  if (problem.coupling.shells().empty()) return 0;
  const auto sums = row_sums(problem);
  double largest = 0;
  for (const Layer& layer : layers_of(problem, regime)) {
    largest = std::max(largest, growth(layer, problem.coupling.shells(), sums, interval, gain));
  }
  return largest;
}

bool extrapolation_is_stable(const Problem& problem, const FlowRegime& regime, double interval) {
  if (problem.coupling.shells().empty() || out_of_reach(problem, row_sums(problem), interval)) return true;
  constexpr double round_off = 1e-9;
  return update_growth(problem, regime, interval, margin) <= 1 + round_off;
}

}  // namespace stillground::march
