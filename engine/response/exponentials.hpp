#pragma once

#include <span>
#include <vector>

namespace stillground::response {

/// amplitude (1 - exp(-time/time_constant)).
struct Exponential {
  double time_constant = 0;  ///< [s], > 0
  double amplitude = 0;      ///< [K m/W], >= 0
};

/// How the mean bore wall answers a step of heat through the walls, per metre of bore: what rises at once, and a sum of
/// exponentials.
struct ExponentialResponse {
  double instant = 0;              ///< [K m/W], >= 0
  std::vector<Exponential> terms;  ///< by rising time constant

  /// Rise per heat `time` seconds after the step, time >= 0 [K m/W].
  double after(double time) const;
};

/// An instant of a march: heat through the walls per metre of bore [W/m] and the rise of the mean wall [K]. The heat is
/// linear between two of them and from nothing at time 0 to the first.
struct Sample {
  double time = 0;  ///< [s], rising
  double heat = 0;
  double rise = 0;
};

struct Fit {
  ExponentialResponse response;
  double misfit = 0;  ///< largest of |fitted - sampled| / sampled over the samples it was fitted to
};

/// The step response that, superposed over the samples' heat, meets their rises best: least squares of the relative
/// differences, no amplitude negative (conduction has none; Lawson & Hanson 1974, Solving least squares problems, ch.
/// 23 [chapter from memory]). Time constants from `shortest` to `longest` [s], four a decade, most of which come to
/// nothing. `samples`: more than there are time constants; those from `shortest` on count, a twentieth of their time
/// apart.
Fit fit(std::span<const Sample> samples, double shortest, double longest);

}  // namespace stillground::response
