#pragma once

#include <string>

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// The worst of a family of comparisons, which fills one row of a claim instead of hundreds.
class WorstCase {
 public:
  /// Keeps the comparison if it misses by more, relative to the reference, than any before. NaN is the worst of all.
  void compare(const std::string& where, double reference, double ours);

  /// The same for misses in the value's own unit. One family is compared in one way only.
  void compare_absolute(const std::string& where, double reference, double ours);

  /// Adds the row "FAMILY: worst of N, WHERE" to the claim, in the way in which the family was compared.
  void row(Claim& claim, const std::string& family, double allowed) const;

  /// The same of a family that is known to miss (see Claim::known_miss).
  void known_row(Claim& claim, const std::string& family, double allowed, double bound,
                 const std::string& reason) const;

 private:
  std::string title(const std::string& family) const;
  void keep(const std::string& where, double reference, double ours, double miss);

  std::string where_;
  double reference_ = 0, ours_ = 0, miss_ = -1;
  int count_ = 0;
  bool is_relative_ = true;
};

}  // namespace stillground::validation
