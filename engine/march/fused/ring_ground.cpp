#include "engine/march/fused/ring_ground.hpp"

#include <algorithm>

#include "engine/march/fused/rows.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march::fused {

namespace {

/// [ring][z] as [z][ring].
Vector by_layer(const Vector& values, std::size_t row) {
  const std::size_t rings = values.size() / row;
  Vector result(values.size());
  for (std::size_t i = 0; i < rings; ++i) {
    for (std::size_t k = 0; k < row; ++k) result[k * rings + i] = values[i * row + k];
  }
  return result;
}

}  // namespace

RingGround::RingGround(const Problem& problem, const Multirate& multirate, const Kernels& kernels)
    : layout_(problem),
      step_(multirate.step),
      kernels_(kernels.rings),
      radial_(problem, ars222::gamma * multirate.step),
      axial_(problem),
      uniform_run_(uniform_runs(problem, kernels.lanes)),
      inverse_of_layer_(by_layer(radial_.inverse(), layout_.row())),
      carry_of_layer_(by_layer(radial_.carry(), layout_.row())),
      drop_of_layer_(by_layer(radial_.drop(), layout_.row())),
      first_above_(scaled(axial_.above(), ars222::gamma * multirate.step)),
      first_below_(scaled(axial_.below(), ars222::gamma * multirate.step)),
      above_(scaled(axial_.above(), multirate.step)),
      below_(scaled(axial_.below(), multirate.step)) {
  using ars222::delta, ars222::gamma;
  factors_ = {.rings = layout_.nr,
              .row = layout_.row(),
              .uniform_run = uniform_run_.data(),
              .inverse = radial_.inverse().data(),
              .carry = radial_.carry().data(),
              .drop = radial_.drop().data(),
              .inverse_of_layer = inverse_of_layer_.data(),
              .carry_of_layer = carry_of_layer_.data(),
              .drop_of_layer = drop_of_layer_.data(),
              .first_above = first_above_.data(),
              .first_below = first_below_.data(),
              .above = above_.data(),
              .below = below_.data(),
              .old = ars222::second_of_old,
              .fresh = ars222::second_of_first,
              .axial_old = delta - (1 - gamma),
              .axial_fresh = 1 - delta};
}

double* RingGround::inwards(std::size_t stage, const GroupView& view, double& lost_heat) const {
  double *y = theta(view), *first = view.scratch;
  if (stage % 2 == 0) {
    lost_heat += lost(1 - ars222::gamma, y);
    kernels_.first_inwards(factors_, y, first);
    return first;
  }
  kernels_.second_inwards(factors_, y, first);
  return y;
}

void RingGround::outwards(std::size_t stage, const GroupView& view, const double*, double& lost_heat) const {
  double *y = theta(view), *first = view.scratch;
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
  for (std::size_t i = 0; i < layout_.nr; ++i) sum += axial_.surface()[i] * rises[i * layout_.row()];
  return part * step_ * sum;
}

}  // namespace stillground::march::fused
