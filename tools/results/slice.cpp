#include "tools/results/slice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/base/errors.hpp"

namespace stillground::results {

namespace {

constexpr double least_room = 8, most_room = 30;  ///< about the bores [m]
constexpr double usual_room = 0.4;                ///< of the field's longer side

std::vector<double> evenly(double from, double to, int nodes) {
  std::vector<double> at;
  for (int i = 0; i < nodes; ++i) at.push_back(from + (to - from) * i / (nodes - 1));
  return at;
}

/// Bores and plot from above, with room about the bores.
void window(const record::Header& header, Slice& slice, int finest) {
  double x0 = HUGE_VAL, x1 = -HUGE_VAL, y0 = HUGE_VAL, y1 = -HUGE_VAL;
  const auto add = [&](double x, double y) {
    x0 = std::min(x0, x), x1 = std::max(x1, x), y0 = std::min(y0, y), y1 = std::max(y1, y);
  };
  for (const record::BoreRow& bore : header.bores) add(bore.x, bore.y);
  const double room = std::clamp(usual_room * std::max(x1 - x0, y1 - y0), least_room, most_room);
  x0 -= room, x1 += room, y0 -= room, y1 += room;
  for (const record::PlanCorner& corner : header.land) add(corner.x, corner.y);
  const double mesh = std::max(x1 - x0, y1 - y0) / (finest - 1);
  slice.x = evenly(x0, x1, 1 + static_cast<int>(std::ceil((x1 - x0) / mesh - 1e-9)));
  slice.y = evenly(y0, y1, 1 + static_cast<int>(std::ceil((y1 - y0) / mesh - 1e-9)));
}

double deepest_toe(const record::Header& header) {
  double toe = 0;
  for (const record::BoreRow& bore : header.bores) toe = std::max(toe, bore.top + bore.depth);
  return toe;
}

}  // namespace

PlanPoint Slice::place(std::size_t i, std::size_t j) const {
  if (cut.depth) return {x[i], y[j]};
  const double length = std::hypot(cut.to.x - cut.from.x, cut.to.y - cut.from.y);
  const double part = x[i] / length;
  return {cut.from.x + part * (cut.to.x - cut.from.x), cut.from.y + part * (cut.to.y - cut.from.y)};
}

Slice empty_slice(const record::Header& header, const Cut& cut, int finest) {
  Slice slice;
  slice.cut = cut;
  if (cut.depth) {
    if (!(*cut.depth >= 0 && *cut.depth <= header.z.back())) {
      throw InputError({}, "--depth",
                       fmt::format("{:g} m is outside what was computed, 0 to {:.0f} m", *cut.depth, header.z.back()));
    }
    window(header, slice, finest);
    return slice;
  }
  const double length = std::hypot(cut.to.x - cut.from.x, cut.to.y - cut.from.y);
  if (!(length > 0)) throw InputError({}, "--section", "the line has no length");
  slice.x = evenly(0, length, finest);
  slice.y = evenly(0, std::min(1.15 * deepest_toe(header), header.z.back()), finest);
  return slice;
}

Slice slice_of(const record::Header& header, const GroundState& state, Slice slice) {
  slice.time = state.time;
  slice.rise.assign(slice.x.size() * slice.y.size(), 0);
  for (std::size_t j = 0; j < slice.y.size(); ++j) {
    slice.undisturbed.push_back(undisturbed_at(header, state, slice.depth(j)));
  }
  if (slice.cut.depth) {
    const std::vector<double> level = rise_at_depth(header, state, *slice.cut.depth);
    for (std::size_t j = 0; j < slice.y.size(); ++j) {
      for (std::size_t i = 0; i < slice.x.size(); ++i) {
        slice.rise[j * slice.x.size() + i] = rise_at(place_weights(header, slice.place(i, j)), level);
      }
    }
    return slice;
  }
  for (std::size_t i = 0; i < slice.x.size(); ++i) {
    const std::vector<double> profile = rise_profile(header, place_weights(header, slice.place(i, 0)), state.rise);
    for (std::size_t j = 0; j < slice.y.size(); ++j) {
      const DepthWeights w = rise_weights(header.z, slice.y[j]);
      slice.rise[j * slice.x.size() + i] = w.weight[0] * profile[w.layer[0]] + w.weight[1] * profile[w.layer[1]];
    }
  }
  return slice;
}

}  // namespace stillground::results
