#pragma once

#include <map>
#include <string>

#include "validation/harness/entry.hpp"

namespace stillground::validation {

/// Gathers a claim's comparisons as curves: the reference as marks, ours as lines, one pair a label.
class Traces {
 public:
  void add(const std::string& label, double x, double reference, double ours) {
    references_[label].emplace_back(x, reference);
    ours_[label].emplace_back(x, ours);
  }

  /// The curves put into a plot that has its titles and axes.
  Plot on(Plot plot) const {
    for (const auto& [label, points] : ours_) plot.curves.push_back({label, points, false});
    for (const auto& [label, points] : references_) plot.curves.push_back({"", points, true});
    return plot;
  }

 private:
  std::map<std::string, std::vector<std::pair<double, double>>> references_, ours_;
};

}  // namespace stillground::validation
