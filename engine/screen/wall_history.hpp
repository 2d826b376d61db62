#pragma once

#include <cstddef>
#include <vector>

#include "engine/screen/pack.hpp"
#include "engine/screen/wall_answers.hpp"

namespace stillground::screen {

/// What the heat of all hours gone by has made of the walls of a circuit, by U_w of every piece (WallAnswers):
///   T_w(t) = sum_h dq_w,h U_w(t - t_h).
/// In a circuit of several bores each answers its own heat as a bore alone in the ground, U_1, and the mean heat of all
/// as their neighbours do, U - U_1. Terms too quick to be straight within an hour are none of its.
class WallHistory {
 public:
  /// Walls are numbered bore by bore. Terms of U and, of more than one bore, of U_1; `interval` [s] between two calls
  /// of advance().
  WallHistory(std::size_t bores, const WallAnswers& field, const WallAnswers& lone, double interval);

  const std::vector<double>& rise() const { return rise_; }             ///< [wall] at the coming interval's start [K]
  const std::vector<double>& history_term() const { return history_; }  ///< at its end by the heat before it alone [K]

  /// Goes on over an interval with `heat` per metre of each wall [W/m].
  void advance(const std::vector<double>& heat);

  /// One exponential, the pieces side by side.
  struct Term {
    Pack own;     ///< A (1 - decay) of the wall's own heat
    Pack shared;  ///< and of the bores' mean
    double time_constant = 0;
    double decay = 0;  ///< exp(-dt/tau)
  };

 private:
  void add_terms(const WallAnswers& answers, double own, double shared, double interval);

  std::size_t bores_, pieces_;
  std::vector<Term> terms_;
  std::vector<Pack> rises_;             // [term][bore]
  std::vector<double> rise_, history_;  // [wall]
};

}  // namespace stillground::screen
