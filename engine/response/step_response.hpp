#pragma once

#include <vector>

namespace stillground::response {

/// A step response in whole hours: the value, per watt, in the n-th hour after a step of heat (n = 0: the hour that
/// begins with it), linear between the knots at which it is given, held beyond the last. See superposition.hpp.
struct StepResponse {
  std::vector<long> hours;     ///< n at the knots, from 0, rising
  std::vector<double> values;  ///< at the knots
  std::vector<double> slopes;  ///< [j]: from knot j to j + 1, per hour

  StepResponse() = default;
  StepResponse(std::vector<long> at_hours, std::vector<double> knot_values);

  /// The value after n >= 0 hours.
  double after(long n) const;
};

}  // namespace stillground::response
