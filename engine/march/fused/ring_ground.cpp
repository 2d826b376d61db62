#include "engine/march/fused/ring_ground.hpp"

#include <algorithm>

#include "engine/march/fused/rows.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march::fused {

namespace {

/// [ring][z] as [z][ring].
Vector turned(const Vector& values, std::size_t row) {
  const std::size_t rings = values.size() / row;
  Vector result(values.size());
  for (std::size_t i = 0; i < rings; ++i) {
    for (std::size_t k = 0; k < row; ++k) result[k * rings + i] = values[i * row + k];
  }
  return result;
}

}  // namespace

RingGround::RingGround(const Problem& problem, const Kernels& kernels)
    : problem_(problem),
      kernels_(kernels.rings),
      radial_(problem, ars222::gamma * problem.step),
      axial_(problem),
      alike_(alike(problem, kernels.lanes)),
      inverse_of_layer_(turned(radial_.inverse(), problem.row())),
      carry_of_layer_(turned(radial_.carry(), problem.row())),
      drop_of_layer_(turned(radial_.drop(), problem.row())),
      first_above_(scaled(axial_.above(), ars222::gamma * problem.step)),
      first_below_(scaled(axial_.below(), ars222::gamma * problem.step)),
      above_(scaled(axial_.above(), problem.step)),
      below_(scaled(axial_.below(), problem.step)) {
  using ars222::delta, ars222::gamma;
  factors_ = {problem.nr(),
              problem.row(),
              alike_.data(),
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
              ars222::second_of_old,
              ars222::second_of_first,
              delta - (1 - gamma),
              1 - delta};
}

double* RingGround::inwards(std::size_t stage, const Site& site, double& lost_heat) const {
  double *y = theta(site), *first = site.scratch;
  if (stage % 2 == 0) {
    lost_heat += lost(1 - ars222::gamma, y);
    kernels_.first_inwards(factors_, y, first);
    return first;
  }
  kernels_.second_inwards(factors_, y, first);
  return y;
}

void RingGround::outwards(std::size_t stage, const Site& site, const double*, double& lost_heat) const {
  double *y = theta(site), *first = site.scratch;
  if (stage % 2 == 0) {
    kernels_.first_outwards(factors_, y, first);
    lost_heat += lost(1, first);
  } else {
    kernels_.second_outwards(factors_, y);
  }
}

/// Through the surface goes what the explicit weights make of stages 0 and 1, y and Y:
///   delta L(y) + (1 - delta) L(Y) = (1 - gamma) L(y) + L(what first_outwards leaves of y and Y).
double RingGround::lost(double part, const double* rises) const {
  double sum = 0;
  for (std::size_t i = 0; i < problem_.nr(); ++i) sum += axial_.surface()[i] * rises[i * problem_.row()];
  return part * problem_.step * sum;
}

}  // namespace stillground::march::fused
