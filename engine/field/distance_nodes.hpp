#pragma once

#include <cstddef>
#include <vector>

#include "engine/model/field.hpp"

namespace stillground::field {

/// Distances 10 % apart from a layout's nearest pair to its farthest, on which what depends on a pair's distance is
/// computed once; a pair shares in the two about it, linear in the logarithm.
class DistanceNodes {
 public:
  /// Needs two bores at least.
  explicit DistanceNodes(const std::vector<model::BoreSite>& bores);

  const std::vector<double>& nodes() const { return nodes_; }  ///< [m], rising

  /// Adds `weight` to the sums at the nodes about `distance` [m], which a pair of the layout has.
  void share(double distance, double weight, std::vector<double>& sums) const;

 private:
  std::vector<double> nodes_;
};

}  // namespace stillground::field
