#pragma once

#include <span>
#include <vector>

#include "engine/response/exponentials.hpp"

namespace stillground::response {

/// Superposition in time over heat that is constant through each of equal intervals: exact, one multiply-add a term and
/// interval instead of a sum over the whole past.
class Superposition {
 public:
  /// `interval` [s], > 0. No heat has flowed yet.
  Superposition(std::span<const Exponential> terms, double interval);

  double rise() const { return rise_; }  ///< at the coming interval's start [K]
  double left() const { return left_; }  ///< what will be left of it at the interval's end, new heat apart [K]

  /// Goes on over an interval with `heat` per metre [W/m].
  void advance(double heat);

 private:
  std::vector<double> keeps_;   // exp(-interval/time constant)
  std::vector<double> gains_;   // amplitude (1 - that)
  std::vector<double> stands_;  // each term's own rise
  double rise_ = 0, left_ = 0;
};

}  // namespace stillground::response
