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
  /// The pieces of a bore's wall lie side by side in a pack, at most as many as that holds. Terms of U and, of more
  /// than one bore, of U_1; `interval` [s] between two calls of advance().
  WallHistory(std::size_t bores, const WallAnswers& field, const WallAnswers& lone, double interval);

  std::size_t bores() const { return rise_.size(); }

  const std::vector<Pack>& rise() const { return rise_; }             ///< [bore] at the coming interval's start [K]
  const std::vector<Pack>& history_term() const { return history_; }  ///< at its end by the heat before it alone [K]

  /// Goes on over an interval with `heat` [bore] per metre of each wall [W/m], 0 beyond the pieces that there are.
  void advance(const std::vector<Pack>& heat);

 private:
  struct Gain {
    Pack own;     // A (1 - decay) of the wall's own heat
    Pack shared;  // and of the bores' mean; of one bore none
  };

  void add_terms(const WallAnswers& answers, double own, double shared, double interval);

  std::vector<double> time_constants_;  // [term]
  std::vector<double> decays_;          // [term] exp(-dt/tau)
  std::vector<Gain> gains_;             // [term]
  std::vector<Pack> rises_;             // [bore][term]
  std::vector<Pack> rise_, history_;    // [bore]
};

}  // namespace stillground::screen
