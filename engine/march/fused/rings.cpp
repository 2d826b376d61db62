#include "engine/march/fused/rings.hpp"

#include <algorithm>

#include "engine/march/tableau.hpp"

namespace stillground::march::fused {

namespace {

Vector scaled(const Vector& values, double by) {
  Vector result = values;
  for (double& value : result) value *= by;
  return result;
}

/// [ring][z] as [z][ring].
Vector turned(const Vector& values, std::size_t row) {
  const std::size_t rings = values.size() / row;
  Vector result(values.size());
  for (std::size_t i = 0; i < rings; ++i) {
    for (std::size_t k = 0; k < row; ++k) result[k * rings + i] = values[i * row + k];
  }
  return result;
}

/// Whether the layers of each pack are of one ground; the padding, where all is zero, goes with any.
std::vector<unsigned char> uniform_packs(const Problem& problem, std::size_t lanes) {
  std::vector<unsigned char> uniform;
  for (std::size_t k = 0; k < problem.row(); k += lanes) {
    bool same = k < problem.nz();
    for (std::size_t other = k + 1; other < std::min(k + lanes, problem.nz()); ++other) {
      const model::Solid &a = problem.grid.solid[k], &b = problem.grid.solid[other];
      same = same && a.conductivity == b.conductivity && a.heat_capacity == b.heat_capacity;
    }
    uniform.push_back(same);
  }
  return uniform;
}

}  // namespace

Rings::Rings(const Problem& problem, double step, const RingRange& range, std::size_t counted, std::size_t lanes)
    : step_(step),
      radial_(problem, ars222::gamma * step, range),
      uniform_(uniform_packs(problem, lanes)),
      inverse_of_layer_(turned(radial_.inverse(), problem.row())),
      carry_of_layer_(turned(radial_.carry(), problem.row())),
      drop_of_layer_(turned(radial_.drop(), problem.row())) {
  using ars222::delta, ars222::gamma;
  const AxialFactors axial(problem);
  first_above_ = scaled(axial.above(), gamma * step);
  first_below_ = scaled(axial.below(), gamma * step);
  above_ = scaled(axial.above(), step);
  below_ = scaled(axial.below(), step);
  for (std::size_t i = range.first; i < range.past; ++i) surface_.push_back(i < counted ? axial.surface()[i] : 0.0);
  // With Y = y + gamma h E(y) + gamma h I(Y) the first stage, the second's right side is
  //   y + h (delta E(y) + (1 - delta) E(Y)) + (1 - gamma) h I(Y), and h I(Y) = (Y - y)/gamma - h E(y).
  const double fresh = (1 - gamma) / gamma;
  factors_ = {range.past - range.first,
              problem.row(),
              uniform_.data(),
              radial_.inverse().data(),
              radial_.carry().data(),
              radial_.drop().data(),
              inverse_of_layer_.data(),
              carry_of_layer_.data(),
              drop_of_layer_.data(),
              first_above_.data(),
              first_below_.data(),
              above_.data(),
              below_.data(),
              1 - fresh,
              fresh,
              delta - (1 - gamma),
              1 - delta};
}

double Rings::surface_loss(const double* y) const {
  double sum = 0;
  for (std::size_t i = 0; i < surface_.size(); ++i) sum += surface_[i] * y[i * factors_.row];
  return sum;
}

}  // namespace stillground::march::fused
