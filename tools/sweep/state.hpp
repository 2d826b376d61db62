#pragma once

#include <atomic>
#include <optional>
#include <vector>

#include "tools/sweep/point.hpp"

namespace stillground::sweep {

/// What is known of one point.
struct Standing {
  Identity point;
  std::optional<Record> screening, march;

  /// The record that its row shows: the march's, if there is one. Null where nothing is there yet.
  const Record* shown() const { return march ? &*march : screening ? &*screening : nullptr; }
};

/// Of every point, [number - 1].
using State = std::vector<Standing>;

/// Looks at every point and reads what the folder has of it. Stops early, with points left blank, once `stop` is set.
State look_at_all(const Points& points, int threads, std::atomic<bool>& stop);

/// Reads the records of these points anew.
void read_again(const Points& points, const std::vector<std::size_t>& numbers, State& state);

/// Numbers of the points that are to be screened yet.
std::vector<std::size_t> to_screen(const Plan& plan, const State& state);

/// Numbers of the points that are to be marched, as far as what is there says: those that a screening is not for or not
/// sure of; where none of these is left, the best. When they are marched there may be others.
std::vector<std::size_t> to_march(const Plan& plan, const State& state);

}  // namespace stillground::sweep
