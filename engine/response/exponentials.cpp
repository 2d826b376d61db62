#include "engine/response/exponentials.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/response/superposition.hpp"

namespace stillground::response {

namespace {

using Eigen::Index;

/// Least squares over the chosen columns alone, zero elsewhere.
Eigen::VectorXd solve(const Eigen::MatrixXd& a, const Eigen::VectorXd& b, const std::vector<Index>& columns) {
  Eigen::MatrixXd chosen(a.rows(), static_cast<Index>(columns.size()));
  for (std::size_t i = 0; i < columns.size(); ++i) chosen.col(static_cast<Index>(i)) = a.col(columns[i]);
  const Eigen::VectorXd part = chosen.householderQr().solve(b);
  Eigen::VectorXd x = Eigen::VectorXd::Zero(a.cols());
  for (std::size_t i = 0; i < columns.size(); ++i) x(columns[i]) = part(static_cast<Index>(i));
  return x;
}

/// Minimises |a x - b| with x >= 0: Lawson & Hanson's NNLS.
Eigen::VectorXd non_negative(const Eigen::MatrixXd& a, const Eigen::VectorXd& b) {
  Eigen::VectorXd x = Eigen::VectorXd::Zero(a.cols());
  std::vector<Index> free;
  const double enough = 1e-10 * (a.transpose() * b).cwiseAbs().maxCoeff();
  for (Index round = 0; round < 3 * a.cols(); ++round) {
    Eigen::VectorXd pull = a.transpose() * (b - a * x);
    for (const Index column : free) pull(column) = 0;
    Index strongest = 0;
    if (pull.maxCoeff(&strongest) <= enough) break;
    free.push_back(strongest);
    for (;;) {
      const Eigen::VectorXd wanted = solve(a, b, free);
      double part = 1;  // of the way there, until an amplitude comes to nothing
      for (const Index column : free) {
        if (wanted(column) <= 0) part = std::min(part, x(column) / (x(column) - wanted(column)));
      }
      x += part * (wanted - x);
      if (part == 1) break;
      const auto spent = [&](Index column) { return wanted(column) <= 0 && x(column) <= 1e-14; };
      for (const Index column : free) x(column) = spent(column) ? 0 : x(column);
      std::erase_if(free, spent);
    }
  }
  return x;
}

/// Those to fit to: not before `from`, and a twentieth of their time apart, so that late steps of equal length don't
/// outweigh the early ones.
std::vector<std::size_t> spread(std::span<const Sample> samples, double from) {
  std::vector<std::size_t> chosen;
  double next = from;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    if (samples[i].rise <= 0 || (samples[i].time < next && i + 1 < samples.size())) continue;
    chosen.push_back(i);
    next = 1.05 * samples[i].time;
  }
  return chosen;
}

}  // namespace

double ExponentialResponse::after(double time) const {
  double rise = instant;
  for (const Exponential& term : terms) rise -= term.amplitude * std::expm1(-time / term.time_constant);
  return rise;
}

Fit fit(std::span<const Sample> samples, double shortest, double longest) {
  std::vector<double> constants;
  const double ratio = std::pow(10, 0.25);
  for (double constant = shortest; constant < longest * ratio; constant *= ratio) constants.push_back(constant);

  const std::vector<std::size_t> chosen = spread(samples, shortest);
  const auto rows = static_cast<Index>(chosen.size()), columns = static_cast<Index>(constants.size()) + 1;
  Eigen::MatrixXd a(rows, columns);
  for (Index row = 0; row < rows; ++row) {
    const Sample& sample = samples[chosen[static_cast<std::size_t>(row)]];
    a(row, 0) = sample.heat / sample.rise;
  }
  for (Index column = 1; column < columns; ++column) {
    const auto at = superposed(samples, constants[static_cast<std::size_t>(column - 1)]);
    for (Index row = 0; row < rows; ++row) {
      const std::size_t i = chosen[static_cast<std::size_t>(row)];
      a(row, column) = at[i] / samples[i].rise;
    }
  }
  const Eigen::VectorXd ones = Eigen::VectorXd::Ones(rows), x = non_negative(a, ones);

  Fit found;
  found.response.instant = x(0);
  for (Index column = 1; column < columns; ++column) {
    if (x(column) > 0) found.response.terms.push_back({constants[static_cast<std::size_t>(column - 1)], x(column)});
  }
  found.misfit = (a * x - ones).cwiseAbs().maxCoeff();
  return found;
}

}  // namespace stillground::response
