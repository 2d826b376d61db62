#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "engine/field/groups.hpp"
#include "engine/model/field.hpp"

namespace stillground::field {

/// How the groups' own temperature rises add up at each group's bore wall:
///   sum of neighbours at group a = sum over groups b, radial cells i of weight(a, b, i) theta_b(r_i),
/// for every layer alike: the mean over the members of a of the sum, at each of them, over all other bores, those of
/// its own group included. Members that are equal by the layout have the same sum. Kept sparse: a distance touches four
/// cells.
class Coupling {
 public:
  Coupling() = default;

  /// `r`: the grid's nodes [m].
  Coupling(const std::vector<model::BoreSite>& bores, const Groups& groups, std::span<const double> r);

  struct Term {
    std::uint32_t source = 0;  ///< group b
    std::uint32_t cell = 0;    ///< radial cell i
    double weight = 0;
  };

  /// Neighbouring radial cells whose part of the sum is formed at the same times: the farther, the slower it changes.
  struct Shell {
    std::size_t first = 0;  ///< cell
    std::size_t end = 0;    ///< one past the last cell
    long every = 1;         ///< update intervals; 1 the nearest, then 2, 4, 8 ...
  };

  /// The terms of group a, by rising cell and source.
  std::span<const Term> terms(std::size_t a) const { return terms_[a]; }

  /// Those of them in a shell's cells.
  std::span<const Term> terms(std::size_t a, const Shell& shell) const;

  /// Shells from the wall out; none for a lone bore. They double in radius, and so does the time between two of their
  /// sums: then each errs as little as the nearest (see shells_within).
  const std::vector<Shell>& shells() const { return shells_; }

 private:
  std::vector<std::vector<Term>> terms_;
  std::vector<Shell> shells_;
};

}  // namespace stillground::field
