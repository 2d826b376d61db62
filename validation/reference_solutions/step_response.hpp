#pragma once

#include <string>
#include <vector>

namespace stillground::reference_solutions {

/// The answer of a linear system to a unit step, tabulated, and exact superposition in time of hourly constant loads.
class StepResponse {
 public:
  /// `times` [s] equally spaced in their logarithm, at least six; between them a polynomial in ln t through the six
  /// nearest. Before the first the answer rises in proportion to time.
  StepResponse(std::vector<double> times, std::vector<double> values);

  /// `time` >= 0, not beyond the table.
  double at(double time) const;

  /// Mean over each hour since the step, `hours` of them (four-point Gauss; the first hour in twelve parts).
  std::vector<double> hourly_means(std::size_t hours) const;

 private:
  double mean(double from, double to) const;

  std::vector<double> times_, values_;
};

/// Means over the hours [from, to) of the answer to hourly `loads`: the sum over all jumps of the load of jump times
/// the step's answer. `means`: hourly means of the step's answer. Exact; one pass over the loads.
double superposed(const std::vector<double>& loads, const std::vector<double>& means, std::size_t from, std::size_t to);

}  // namespace stillground::reference_solutions
