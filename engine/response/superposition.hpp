#pragma once

#include <span>
#include <vector>

#include "engine/response/exponentials.hpp"
#include "engine/response/step_response.hpp"

namespace stillground::response {

/// Superposition in time (Duhamel's theorem): heat q that changes by dq_h at the times t_h raises a temperature by
///
///   T(t) = sum_h dq_h U(t - t_h),    U: the step response.
///
/// Each form in which U and q are known has one function here, all of them exact for it. Source: Carslaw & Jaeger
/// (1959), 1.14 [section from memory].

/// U linear between knots, q constant through each hour. `heat_before`: [h] sum of the hourly heat before hour h, from
/// 0 on [W h]. One product a knot: where U is linear, a difference of two sums stands for all the hours between.
///
/// Value in `hour`; `heat_before` has at least hour + 2 entries.
double superposed(const StepResponse& response, std::span<const double> heat_before, long hour);

/// The history term of that value, what the heat of earlier hours does: T less U(0) times the hour's own heat, which
/// need not be known yet: hour + 1 entries.
double history_term(const StepResponse& response, std::span<const double> heat_before, long hour);

/// Values of all heat_before.size() - 1 hours, in far less time than one by one.
std::vector<double> superposed(const StepResponse& response, std::span<const double> heat_before);

/// U one exponential of amplitude 1, q linear between the samples and from nothing at time 0: value at each sample.
std::vector<double> superposed(std::span<const Sample> samples, double time_constant);

}  // namespace stillground::response
