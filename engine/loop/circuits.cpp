#include "engine/loop/circuits.hpp"

#include <utility>

namespace stillground::loop {

Circuits::Circuits(std::vector<Link> links)
    : links_(std::move(links)),
      own_gain_(links_.size()),
      gain_(links_.size()),
      offset_(links_.size()),
      share_(links_.size()) {}

void Circuits::set_gains(std::span<const double> gain, std::span<const double> heat_rate) {
  // W = sum_r n_r w_r
  flow_ = 0;
  for (std::size_t g = 0; g < links_.size(); ++g) {
    if (links_[g].returns) flow_ += links_[g].members * heat_rate[g];
  }
  field_gain_ = 0;
  for (std::size_t g = 0; g < links_.size(); ++g) {
    const Link& link = links_[g];
    own_gain_[g] = gain_[g] = share_[g] = 0;
    if (heat_rate[g] <= 0) continue;
    own_gain_[g] = gain[g];
    // A_g = a_g A_u
    gain_[g] = gain[g] * (link.upstream == Link::none ? 1.0 : gain_[link.upstream]);
    if (!link.returns) continue;
    // s_r = n_r w_r / W;  gain of the field = sum_r s_r A_r
    share_[g] = link.members * heat_rate[g] / flow_;
    field_gain_ += share_[g] * gain_[g];
  }
}

FieldOutlet Circuits::set_offsets(std::span<const double> offset) {
  FieldOutlet field{field_gain_, 0, flow_};
  for (std::size_t g = 0; g < links_.size(); ++g) {
    // B_g = a_g B_u + b_g;  offset of the field = sum_r s_r B_r
    const std::size_t upstream = links_[g].upstream;
    offset_[g] = offset[g];
    if (upstream != Link::none) offset_[g] += own_gain_[g] * offset_[upstream];
    if (share_[g] > 0) field.offset += share_[g] * offset_[g];
  }
  return field;
}

FieldOutlet outlet_under_load(double unloaded, double slope, double heat_rate) {
  return {slope / (1 + slope), unloaded / (1 + slope), heat_rate};
}

}  // namespace stillground::loop
