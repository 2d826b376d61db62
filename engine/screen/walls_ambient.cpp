#include "engine/screen/walls_ambient.hpp"

#include <algorithm>

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

WallsAmbient::WallsAmbient(const CircuitShape& shape, WallsUndisturbed undisturbed, WallHistory history)
    : pieces_(shape.walls_of_a_bore()), undisturbed_(std::move(undisturbed)), history_(std::move(history)) {
  for (std::size_t piece = 0; piece < pieces_; ++piece) parts_.values[piece] = shape.part_of(piece);
}

namespace {

/// A bore's walls within an hour: undisturbed u, straight from midnight to midnight, and what earlier heat makes of
/// them, r before the hour and h after it,
///   T_before = u(start) + r,   T_after = u(end) + h,   middle = (T_before + T_after)/2,
/// and their means over the metres, added to `before`, `after` and `rise`.
STILLGROUND_CLONED
void ambient_of_bore(const WallsUndisturbed::Day& day, double start, double end, const Pack& rise, const Pack& history,
                     Pack& middle, const Pack& parts, Pack (&means)[3]) {
  const Wide within = wide(day.midnight_after) - wide(day.midnight_before);
  const Wide before = wide(day.midnight_before) + start * within + wide(rise);
  const Wide after = wide(day.midnight_before) + end * within + wide(history);
  wide(middle) = (before + after) / 2;
  wide(means[0]) += wide(parts) * before;
  wide(means[1]) += wide(parts) * after;
  wide(means[2]) += wide(parts) * wide(rise);
}

double sum(const Pack& pack) {
  double all = 0;
  for (const double value : pack.values) all += value;
  return all;
}

}  // namespace

WallsAmbient::Means WallsAmbient::enter(long hour, double* ambient) {
  const long of_day = hour % 24;
  if (of_day == 0) undisturbed_.begin_day(hour / 24);
  const double start = static_cast<double>(of_day) / 24, end = start + 1.0 / 24;
  Pack means[3] = {};
  for (std::size_t b = 0; b < history_.bores(); ++b) {
    Pack middle;
    ambient_of_bore(undisturbed_.today(), start, end, history_.rise()[b], history_.history_term()[b], middle, parts_,
                    means);
    std::copy_n(middle.values, pieces_, ambient + b * pieces_);
  }
  const double before = sum(means[0]), after = sum(means[1]);
  for (std::size_t w = 0; w < history_.bores() * pieces_; ++w) ambient[w] -= (after - before) / 2;
  return {after - before, after, sum(means[2])};
}

std::vector<double> WallsAmbient::undisturbed_at_start() {
  std::vector<double> walls(pieces_);
  undisturbed_.look(0, walls);
  return walls;
}

}  // namespace stillground::screen
