#include "validation/harness/worst_case.hpp"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>

namespace stillground::validation {

void WorstCase::compare(const std::string& where, double reference, double ours) {
  keep(where, reference, ours, std::abs(ours / reference - 1));
}

void WorstCase::compare_absolute(const std::string& where, double reference, double ours) {
  is_relative_ = false;
  keep(where, reference, ours, std::abs(ours - reference));
}

void WorstCase::keep(const std::string& where, double reference, double ours, double miss) {
  ++count_;
  if (std::isnan(miss_) || miss <= miss_) return;
  where_ = where;
  reference_ = reference;
  ours_ = ours;
  miss_ = miss;
}

std::string WorstCase::title(const std::string& family) const {
  if (count_ == 0) throw std::runtime_error("nothing was compared: " + family);
  return fmt::format("{}: worst of {}, {}", family, count_, where_);
}

void WorstCase::row(Claim& claim, const std::string& family, double allowed) const {
  if (is_relative_) {
    claim.relative(title(family), reference_, ours_, allowed);
  } else {
    claim.absolute(title(family), reference_, ours_, allowed);
  }
}

void WorstCase::known_row(Claim& claim, const std::string& family, double allowed, double bound,
                          const std::string& reason) const {
  if (is_relative_) {
    claim.known_miss(title(family), reference_, ours_, allowed, bound, reason);
  } else {
    claim.known_absolute_miss(title(family), reference_, ours_, allowed, bound, reason);
  }
}

}  // namespace stillground::validation
