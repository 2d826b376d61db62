#pragma once

#include <span>
#include <vector>

namespace stillground::response {

/// How something answers a step of heat, for superposition in time over hourly loads: its value in the n-th hour after
/// the step (n = 0: the hour that begins with it), linear between the knots at which it is given, held beyond the last.
class StepResponse {
 public:
  StepResponse() = default;

  /// `hours`: n at the knots, from 0, rising; `values`: per watt, as many.
  StepResponse(std::vector<long> hours, std::vector<double> values);

  /// The value after n >= 0 hours.
  double after(long n) const;

  /// Sum over all hours h so far of after(hour - h) times the heat's change at h, with no heat before hour 0.
  /// `heat_before`: [h] sum of the hourly heat before hour h, at least hour + 2 entries [W h]. One product a knot:
  /// where the kernel is linear, a difference of two sums stands for all the hours between.
  double superposed(std::span<const double> heat_before, long hour) const;

  /// The part of it that the heat of earlier hours has: without after(0) times that of the hour itself. `heat_before`
  /// need not know the hour's own yet: hour + 1 entries.
  double left_over(std::span<const double> heat_before, long hour) const;

  /// superposed() of every hour, heat_before.size() - 1 of them, in far less time.
  std::vector<double> superposed(std::span<const double> heat_before) const;

 private:
  std::vector<long> hours_;
  std::vector<double> values_;
  std::vector<double> slopes_;  // [j]: from knot j to j + 1, per hour
};

}  // namespace stillground::response
