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

/// U a sum of exponentials, q constant through equal intervals, one after the other: a term's part of T goes over an
/// interval dt as T_j <- d_j T_j + A_j (1 - d_j) q with the decay factor d_j = exp(-dt/tau_j), one multiply-add instead
/// of a sum over the whole past.
class RunningSuperposition {
 public:
  /// `interval`: dt [s], > 0. No heat has flowed yet.
  RunningSuperposition(std::span<const Exponential> terms, double interval);

  double rise() const { return rise_; }             ///< T at the coming interval's start [K]
  double history_term() const { return history_; }  ///< T at its end by the heat before it alone [K]

  /// Goes on over an interval with `heat` per metre [W/m].
  void advance(double heat);

 private:
  std::vector<double> decay_factors_;  // d_j
  std::vector<double> gains_;          // A_j (1 - d_j)
  std::vector<double> rises_;          // T_j
  double rise_ = 0, history_ = 0;
};

}  // namespace stillground::response
