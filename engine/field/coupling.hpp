#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "engine/field/groups.hpp"
#include "engine/model/field.hpp"

namespace stillground::field {

/// How the groups' own temperature rises add up at each group's bore wall:
///   sum of neighbours at group a = sum over groups b, radial cells i of weight(a, b, i) theta_b(r_i),
/// for every layer alike. The multiplicities of the members are folded into the weights. Kept sparse: a distance
/// touches four cells.
class Coupling {
 public:
  /// `r`: the grid's nodes [m].
  Coupling(const std::vector<model::BoreSite>& bores, const Groups& groups, std::span<const double> r);

  struct Term {
    std::size_t source = 0;  ///< group b
    std::size_t cell = 0;    ///< radial cell i
    double weight = 0;
  };

  /// The terms of group a, by rising source and cell.
  std::span<const Term> terms(std::size_t a) const { return terms_[a]; }

 private:
  std::vector<std::vector<Term>> terms_;
};

}  // namespace stillground::field
