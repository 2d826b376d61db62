#include "engine/bore/multipole.hpp"

#include <fmt/format.h>

#include <Eigen/LU>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "engine/base/errors.hpp"

namespace stillground::bore {
namespace {

using Complex = std::complex<double>;
using std::numbers::pi;

constexpr int largest_order = 60;
constexpr double converged = 1e-10;
constexpr double tolerable = 1e-5;

// How the sources of pipe n appear on the circle of pipe m: coefficients of zeta^j, j = 0..order, zeta = (z - z_m)/r_m.
struct Influence {
  Eigen::VectorXcd line;    // of unit heat, times 2 pi k_b; without the own singular logarithm
  Eigen::MatrixXcd direct;  // [j][k-1] of P_nk; zero for n = m
  Eigen::MatrixXcd image;   // [j][k-1] of conj(P_nk)
};

// Seen from the circle of pipe m, r_n/(z - z_n) and its image are both of the form (a + b zeta)/(1 - c zeta), |c| < 1.
struct Ratio {
  Complex a, b, c;
};

// Coefficients of -ln(1 - c zeta) and of the ratio's powers, times `factor`, added to `line` and `multipoles`.
void expand(const Ratio& ratio, double factor, Eigen::VectorXcd& line, Eigen::MatrixXcd& multipoles) {
  const Eigen::Index order = multipoles.cols();
  Complex power = factor;
  for (Eigen::Index j = 1; j <= order; ++j) {
    power *= ratio.c;
    line[j] += power / double(j);
  }
  Eigen::VectorXcd series = Eigen::VectorXcd::Zero(order + 1);
  series[0] = factor;
  for (Eigen::Index k = 0; k < order; ++k) {
    // times (a + b zeta), divided by (1 - c zeta)
    Complex below = series[0];
    series[0] *= ratio.a;
    for (Eigen::Index j = 1; j <= order; ++j) {
      const Complex here = series[j];
      series[j] = ratio.a * here + ratio.b * below + ratio.c * series[j - 1];
      below = here;
    }
    multipoles.col(k) += series;
  }
}

Influence influence_of(const BoreSection& section, std::size_t m, std::size_t n, int order) {
  Influence influence{Eigen::VectorXcd::Zero(order + 1), Eigen::MatrixXcd::Zero(order + 1, order),
                      Eigen::MatrixXcd::Zero(order + 1, order)};
  const Complex on = section.pipes[m].centre();
  const Complex of = section.pipes[n].centre();
  const double r_on = section.pipes[m].outer_radius;
  const double r_of = section.pipes[n].outer_radius;
  if (m == n) {
    influence.line[0] = std::log(section.radius / r_on);
  } else {
    influence.line[0] = std::log(section.radius / std::abs(on - of));
    expand({r_of / (on - of), 0, -r_on / (on - of)}, 1, influence.line, influence.direct);
  }
  const double squared = section.radius * section.radius;
  const Complex gap = squared - on * std::conj(of);
  influence.line[0] += section.contrast() * std::log(squared / std::abs(gap));
  expand({r_of * on / gap, r_of * r_on / gap, r_on * std::conj(of) / gap}, section.contrast(), influence.line,
         influence.image);
  return influence;
}

// On pipe m, mode j: conj(P_mj) = A_mj (beta j - 1)/(beta j + 1), beta = 2 pi k_b R_m, A_mj what all other sources
// bring. With X = conj(P) = u + i v and A = line q + direct conj(X) + image X the real system for (u, v) is assembled
// here.
class ModeSystem {
 public:
  ModeSystem(Eigen::Index pipes, int order)
      : order_(order),
        size_(pipes * order),
        matrix_(Eigen::MatrixXd::Identity(2 * size_, 2 * size_)),
        heat_(Eigen::MatrixXd::Zero(2 * size_, pipes)) {}

  void add(Eigen::Index m, Eigen::Index n, const Influence& influence, double beta, double per_heat) {
    for (int j = 1; j <= order_; ++j) {
      const double g = (beta * j - 1) / (beta * j + 1);
      const Eigen::Index row = m * order_ + j - 1;
      heat_(row, n) += g * per_heat * influence.line[j].real();
      heat_(size_ + row, n) += g * per_heat * influence.line[j].imag();
      for (int k = 1; k <= order_; ++k) {
        const Complex c = g * influence.direct(j, k - 1);
        const Complex d = g * influence.image(j, k - 1);
        const Eigen::Index column = n * order_ + k - 1;
        matrix_(row, column) -= c.real() + d.real();
        matrix_(row, size_ + column) -= c.imag() - d.imag();
        matrix_(size_ + row, column) -= c.imag() + d.imag();
        matrix_(size_ + row, size_ + column) -= d.real() - c.real();
      }
    }
  }

  // P_nj for unit heat from each pipe. Pipes on the x axis bring no imaginary parts: an eighth of the work.
  Eigen::MatrixXcd solve(bool on_axis) const {
    if (on_axis) {
      return matrix_.topLeftCorner(size_, size_).partialPivLu().solve(heat_.topRows(size_)).cast<Complex>();
    }
    const Eigen::MatrixXd uv = matrix_.partialPivLu().solve(heat_);
    Eigen::MatrixXcd strength(size_, heat_.cols());
    strength.real() = uv.topRows(size_);
    strength.imag() = -uv.bottomRows(size_);
    return strength;
  }

 private:
  int order_;
  Eigen::Index size_;
  Eigen::MatrixXd matrix_;
  Eigen::MatrixXd heat_;
};

}  // namespace

Multipoles solve_multipoles(const BoreSection& section, int order) {
  assert(order >= 0 && order <= largest_order);
  check_section(section);
  const auto pipes = static_cast<Eigen::Index>(section.pipes.size());
  const double per_heat = 1 / (2 * pi * section.grout_conductivity);

  std::vector<Influence> influences;
  ModeSystem system(pipes, order);
  for (Eigen::Index m = 0; m < pipes; ++m) {
    for (Eigen::Index n = 0; n < pipes; ++n) {
      influences.push_back(influence_of(section, std::size_t(m), std::size_t(n), order));
      system.add(m, n, influences.back(), section.pipes[std::size_t(m)].resistance / per_heat, per_heat);
    }
  }
  Multipoles result{section, order, 0, Eigen::MatrixXd::Zero(pipes, pipes), Eigen::MatrixXcd(0, pipes)};
  const bool on_axis = std::ranges::all_of(section.pipes, [](const SectionPipe& pipe) { return pipe.y == 0; });
  if (order > 0) result.strength = system.solve(on_axis);

  for (Eigen::Index m = 0; m < pipes; ++m) {
    result.resistance(m, m) = section.pipes[std::size_t(m)].resistance;
    for (Eigen::Index n = 0; n < pipes; ++n) {
      const Influence& influence = influences[std::size_t(m * pipes + n)];
      const auto strength = result.strength.middleRows(n * order, order);
      result.resistance(m, n) += per_heat * influence.line[0].real();
      result.resistance.row(m) +=
          (influence.direct.row(0) * strength + influence.image.row(0) * strength.conjugate()).real();
    }
  }
  return result;
}

Multipoles solve_multipoles(const BoreSection& section) {
  constexpr int first = 6;
  constexpr int step = 6;
  Multipoles coarse = solve_multipoles(section, first);
  for (int order = first + step; order <= largest_order; order += step) {
    Multipoles fine = solve_multipoles(section, order);
    fine.change = (fine.resistance - coarse.resistance).cwiseAbs().maxCoeff() / fine.resistance.cwiseAbs().maxCoeff();
    if (fine.change <= converged) return fine;
    coarse = std::move(fine);
  }
  if (coarse.change <= tolerable) return coarse;
  throw NumericsError(
      fmt::format("the bore's resistances still change by {:.1e} of the largest up to multipole order {}: "
                  "pipes without resistance that touch each other or the bore wall?",
                  coarse.change, largest_order));
}

}  // namespace stillground::bore
