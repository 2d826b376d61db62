#pragma once

#include <vector>

#include "engine/response/field_response.hpp"

namespace stillground::screen {

/// How the pieces of a bore's wall answer their own heat per metre: what rises at once, and a sum of exponentials over
/// time constants that all share,
///   U_w(t) = instant_w + sum_j A_wj (1 - exp(-t/tau_j)).
struct WallAnswers {
  std::vector<double> instant;                  ///< [piece], K m/W
  std::vector<double> time_constants;           ///< rising [s]
  std::vector<std::vector<double>> amplitudes;  ///< [piece][time constant], K m/W, >= 0
  double misfit = 0;                            ///< largest of response::Fit's

  std::size_t pieces() const { return instant.size(); }
};

/// Fits them, each by itself, to what a march told. Time constants up to `longest` [s].
WallAnswers fitted(const response::FieldResponse& response, double longest);

/// Of the same bores in ground of `conductivity` and `heat_capacity` times as much everywhere: what rises per heat goes
/// with 1/k, time with c/k.
WallAnswers scaled(WallAnswers answers, double conductivity, double heat_capacity);

/// Those of its time constants from `least` on and below `most`, without what rises at once.
WallAnswers between(const WallAnswers& answers, double least, double most);

}  // namespace stillground::screen
