#include "engine/response/superposition.hpp"

#include <cmath>
#include <cstddef>

namespace stillground::response {

Superposition::Superposition(std::span<const Exponential> terms, double interval) : stands_(terms.size()) {
  for (const Exponential& term : terms) {
    const double x = interval / term.time_constant;
    keeps_.push_back(std::exp(-x));
    gains_.push_back(-term.amplitude * std::expm1(-x));
  }
}

void Superposition::advance(double heat) {
  double rise = 0, left = 0;
  for (std::size_t j = 0; j < stands_.size(); ++j) {
    const double now = keeps_[j] * stands_[j] + gains_[j] * heat;
    stands_[j] = now;
    rise += now;
    left += keeps_[j] * now;
  }
  rise_ = rise;
  left_ = left;
}

}  // namespace stillground::response
