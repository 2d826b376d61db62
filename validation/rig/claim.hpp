#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace stillground::validation {

/// One published claim on trial: prints a row a comparison and ends with the verdict that the program returns.
class Claim {
 public:
  /// `text`: what is claimed; `source`: where the reference comes from.
  Claim(const std::string& text, const std::string& source) {
    fmt::print("{}\nsource: {}\n{:>34} {:>14} {:>14} {:>10} {:>10}\n", text, source, "at", "reference", "ours", "miss",
               "allowed");
  }

  /// Compares one value; `allowed` relative to the reference.
  void relative(const std::string& at, double reference, double ours, double allowed) {
    row(at, reference, ours, ours / reference - 1, allowed);
  }

  /// Compares one value; `allowed` in its own unit.
  void absolute(const std::string& at, double reference, double ours, double allowed) {
    row(at, reference, ours, ours - reference, allowed);
  }

  /// A relative comparison that is known to miss, for the stated reason: fails if it gets worse than `bound`, and if it
  /// is cured and still listed.
  void known_miss(const std::string& at, double reference, double ours, double allowed, double bound,
                  const std::string& reason) {
    const double miss = ours / reference - 1;
    const bool as_known = std::abs(miss) > allowed && std::abs(miss) <= bound;
    fmt::print("{:>34} {:14.6g} {:14.6g} {:10.2e} {:10.1e}  known miss (bound {:.1e}): {}{}\n", at, reference, ours,
               miss, allowed, bound, reason, as_known ? "" : "  NO LONGER AS KNOWN");
    ++rows_;
    ++known_;
    if (!as_known) ++missed_;
  }

  /// 0 if every comparison held and there was at least one; 1 otherwise.
  int verdict() const {
    fmt::print("{} comparisons, {} missed, {} known to miss; the others' largest miss is {:.4g} of what is allowed\n",
               rows_, missed_, known_, worst_);
    return rows_ > 0 && missed_ == 0 ? 0 : 1;
  }

 private:
  void row(const std::string& at, double reference, double ours, double miss, double allowed) {
    const bool held = std::abs(miss) <= allowed;  // false for NaN as well
    fmt::print("{:>34} {:14.6g} {:14.6g} {:10.2e} {:10.1e}{}\n", at, reference, ours, miss, allowed,
               held ? "" : "  MISSED");
    ++rows_;
    if (!held) ++missed_;
    worst_ = std::max(worst_, std::abs(miss) / allowed);
  }

  int rows_ = 0;
  int missed_ = 0;
  int known_ = 0;
  double worst_ = 0;
};

}  // namespace stillground::validation
