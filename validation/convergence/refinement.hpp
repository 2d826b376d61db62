#pragma once

#include <map>
#include <string>
#include <vector>

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// One quantity (a number, or a series of them) computed on ever finer steps or cells, each half the size of the one
/// before: what its differences tell of the order and of the error. Roache 1998, Verification and Validation in
/// Computational Science and Engineering (from memory).
struct Refinement {
  std::vector<double> sizes;                 ///< falling by halves
  std::vector<std::vector<double>> answers;  ///< one a size, equally long

  /// Root of the mean square of the difference between sizes i and i + 1.
  double difference(std::size_t i) const;

  /// Observed order from sizes i, i + 1, i + 2.
  double order(std::size_t i) const;

  /// Slope of log(difference) over log(size), by least squares.
  double fitted_order() const;

  /// Richardson's estimate of the error (root mean square) at size i, with the fitted order.
  double error(std::size_t i) const;

  /// Adds rows: the fitted order within [least, most], each order observed (those of `known` as known misses of the
  /// range's middle), and Richardson's error at size `at` within what is allowed; and the plot of the differences.
  void rows(Claim& claim, const std::string& what, const std::string& unit_of_size, double least, double most,
            std::size_t at, double allowed, const std::string& unit,
            const std::map<std::size_t, KnownMiss>& known = {}) const;
};

}  // namespace stillground::validation
