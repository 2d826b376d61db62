#include "engine/march/fused/exchange.hpp"

#include <algorithm>

namespace stillground::march::fused {

ExchangeBuffer::ExchangeBuffer(std::size_t groups, std::size_t span, const Workers& workers) : span_(span) {
  constexpr std::size_t together = apart / sizeof(double);
  for (std::size_t thread = 0; thread < static_cast<std::size_t>(workers.threads()); ++thread) {
    const auto [from, end] = workers.part(groups, thread);
    const std::size_t first = slot_.empty() ? 0 : (slot_.back() / together + 1) * together;
    for (std::size_t g = from; g < end; ++g) slot_.push_back(first + g - from);
  }
  const std::size_t slots = slot_.back() + 1;
  outlets_ = {Vector(slots * span), Vector(slots * span)};
  responses_.assign(slots, nullptr);
  hours_.assign(slots, {});
}

void ExchangeBuffer::publish_outlets(std::size_t first, std::size_t group, const Vector& outlets) {
  std::copy(outlets.begin(), outlets.end(), outlets_[first / span_ % 2].data() + slot_[group] * span_);
}

}  // namespace stillground::march::fused
