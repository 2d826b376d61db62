#include "engine/transit/near_ground.hpp"

#include <cmath>
#include <numbers>
#include <utility>

namespace stillground::transit {

namespace {

constexpr double ratio = 1.18;  // half the width of a run's rings: within minutes heat is in the first of them
constexpr double reach = 5;     // heat of three weeks stays within [m]

}  // namespace

NearGround::NearGround(double bore_radius, std::vector<Stretch> stretches)
    : ratio_log_(std::log(ratio)), stretches_(std::move(stretches)), slices_(stretches_.back().end) {
  for (double inner = bore_radius; inner < bore_radius + reach; inner *= ratio) {
    rings_.push_back({std::numbers::pi * inner * inner * (ratio * ratio - 1)});
  }
  theta_.assign(rings_.size() * slices_, 0.0);
}

double NearGround::first_resistance(const model::Solid& solid) const {
  return ratio_log_ / 2 / (2 * std::numbers::pi * solid.conductivity);
}

NearGround::Factors NearGround::factors(const model::Solid& solid, double step) const {
  Factors made;
  made.conductance = 2 * std::numbers::pi * solid.conductivity / ratio_log_;
  const double k = made.conductance;
  made.pivot.resize(rings_.size());
  for (const Ring& ring : rings_) made.stored.push_back(solid.heat_capacity * ring.area / step);
  for (std::size_t i = rings_.size(); i-- > 0;) {
    double diagonal = made.stored[i] + (i > 0 ? k : 0.0);
    if (i + 1 < rings_.size()) diagonal += k - k * k * made.pivot[i + 1];
    made.pivot[i] = 1 / diagonal;
  }
  return made;
}

void NearGround::advance(double step, std::span<const double> heat) {
  if (step != factored_for_) {
    factors_.clear();
    for (const Stretch& stretch : stretches_) factors_.push_back(factors(stretch.solid, step));
    factored_for_ = step;
  }
  const std::size_t rings = rings_.size();
  for (std::size_t n = 0; n < stretches_.size(); ++n) {
    const Stretch& at = stretches_[n];
    const Factors& made = factors_[n];
    // Inwards: the right side, with what the ring beyond passes on.
    for (std::size_t i = rings; i-- > 0;) {
      double* own = theta_.data() + i * slices_;
      const double* outer = own + slices_;
      const double stored = made.stored[i];
      const double passed = i + 1 < rings ? made.conductance * made.pivot[i + 1] : 0.0;
      for (std::size_t k = at.first; k < at.end; ++k) {
        own[k] = stored * own[k] + (i == 0 ? heat[k] : 0.0) + (i + 1 < rings ? passed * outer[k] : 0.0);
      }
    }
    // Outwards.
    for (std::size_t i = 0; i < rings; ++i) {
      double* own = theta_.data() + i * slices_;
      for (std::size_t k = at.first; k < at.end; ++k) {
        own[k] = made.pivot[i] * (own[k] + (i > 0 ? made.conductance * own[k - slices_] : 0.0));
      }
    }
  }
}

}  // namespace stillground::transit
