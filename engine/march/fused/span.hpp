#pragma once

#include <cmath>
#include <cstddef>

#include "engine/base/calendar.hpp"
#include "engine/march/multirate.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march::fused {

/// How an hour's stages are divided: `length` of them, a span, are marched before the loop is closed for all of them.
/// Spans of one stage are closed before the groups go on: the stage is left half done meanwhile.
struct Spans {
  std::size_t stages = 0;  ///< of an hour, two a step
  std::size_t length = 1;
  double step = 0;  ///< h [s]

  /// All stages of an hour at once, unless they are many: what stages do to each other grows with their square.
  Spans(double step_seconds, bool stage_by_stage)
      : stages(2 * static_cast<std::size_t>(std::lround(seconds_per_hour / step_seconds))), step(step_seconds) {
    constexpr std::size_t most = 8;
    std::size_t parts = 1;
    while (stages / 2 % parts != 0 || stages / parts > most) ++parts;
    if (!stage_by_stage) length = stages / parts;
  }

  bool stage_by_stage() const { return length == 1; }

  /// t + h (n + c_i): stage i = 1, 2 of step n [s].
  double time(double hour_start, std::size_t stage) const {
    return hour_start + step * (static_cast<double>(stage / 2) + ars222::c[1 + stage % 2]);
  }

  /// What a stage counts for in an hour's means and sums [s]: h times its implicit weight.
  double seconds(std::size_t stage) const { return step * ars222::implicit_weight[1 + stage % 2]; }
};

inline bool starts_a_macro_step(double time) {
  return std::lround(time / seconds_per_hour) % Multirate::macro_step_hours == 0;
}
inline bool starts_a_day(double time) {
  return std::lround(time / seconds_per_hour) % 24 == 0;
}

}  // namespace stillground::march::fused
