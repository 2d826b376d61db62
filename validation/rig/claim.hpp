#pragma once

#include <fmt/format.h>

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

  /// 0 if every comparison held and there was at least one; 1 otherwise.
  int verdict() const {
    fmt::print("{} comparisons, {} missed; largest miss {:.4g} of what is allowed\n", rows_, missed_, worst_);
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
  double worst_ = 0;
};

}  // namespace stillground::validation
