#include "validation/fluid_profile/two_streams.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillground::validation {

TwoStreams::TwoStreams(std::vector<Reach> reaches, double heat_rate)
    : reaches_(std::move(reaches)), heat_rate_(heat_rate) {}

TwoStreams::Pair TwoStreams::over_toe(double depth) const {
  double bottom = 0;
  for (const Reach& reach : reaches_) bottom += reach.length;
  double mean = 1, half_difference = 0;
  for (auto reach = reaches_.rbegin(); reach != reaches_.rend() && depth < bottom; ++reach) {
    const double x = std::min(reach->length, bottom - depth);
    const double kappa = 1 / (heat_rate_ * std::sqrt(reach->internal * reach->bore));
    const double cosine = std::cosh(kappa * x), sine = std::sinh(kappa * x) / (kappa * heat_rate_);
    const double below = mean;
    mean = cosine * below + sine * 2 / reach->internal * half_difference;
    half_difference = cosine * half_difference + sine / (2 * reach->bore) * below;
    bottom -= reach->length;
  }
  return {mean + half_difference, mean - half_difference};
}

TwoStreams::Pair TwoStreams::at(double depth) const {
  const Pair here = over_toe(depth);
  const double inlet = over_toe(0).down;
  return {here.down / inlet, here.up / inlet};
}

}  // namespace stillground::validation
