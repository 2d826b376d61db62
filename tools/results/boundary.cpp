#include "tools/results/boundary.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/base/calendar.hpp"
#include "tools/results/drift.hpp"

namespace stillground::results {

namespace {

constexpr double apart = 1;  ///< from place to place along the line [m]
constexpr std::size_t most_places = 2000;
constexpr int arc = 8;  ///< pieces of a full turn's quarter

/// Corners of a widened hull, its round corners in short pieces.
std::vector<PlanPoint> corners_of(const WidenedHull& hull) {
  std::vector<PlanPoint> around;
  for (const PlanPoint& corner : hull.corners) {
    for (int i = 0; i < 4 * arc; ++i) {
      const double angle = 2 * std::numbers::pi * i / (4 * arc);
      around.push_back({corner.x + hull.margin * std::cos(angle), corner.y + hull.margin * std::sin(angle)});
    }
  }
  return convex_hull(around);
}

std::vector<PlanPoint> places_along(const std::vector<PlanPoint>& corners) {
  double around = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const PlanPoint &a = corners[i], &b = corners[(i + 1) % corners.size()];
    around += std::hypot(b.x - a.x, b.y - a.y);
  }
  const double step = std::max(apart, around / static_cast<double>(most_places));
  std::vector<PlanPoint> places;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const PlanPoint &a = corners[i], &b = corners[(i + 1) % corners.size()];
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::hypot(b.x - a.x, b.y - a.y) / step)));
    for (int p = 0; p < pieces; ++p) {
      const double part = static_cast<double>(p) / pieces;
      places.push_back({a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)});
    }
  }
  return places;
}

/// Where the rise is looked at below a place, as parts of the layers.
std::vector<std::pair<double, DepthWeights>> depths_of(const record::Header& header, std::optional<double> depth) {
  if (depth) return {{*depth, rise_weights(header.z, *depth)}};
  std::vector<std::pair<double, DepthWeights>> depths;
  for (const double z : header.z) depths.emplace_back(z, rise_weights(header.z, z));
  return depths;
}

void take(const BoundaryChange& here, BoundaryChange& warmed, BoundaryChange& cooled) {
  if (here.rise > warmed.rise) warmed = here;
  if (here.rise < cooled.rise) cooled = here;
}

}  // namespace

BoundaryLine boundary_line(const record::Header& header) {
  if (!header.land.empty()) {
    BoundaryLine line{{}, "the plot's outline"};
    for (const record::PlanCorner& corner : header.land) line.corners.push_back({corner.x, corner.y});
    return line;
  }
  return {corners_of(ground_block(header.bores)), "the bores' hull widened by half their distance"};
}

Boundary boundary_of(const record::read::Result& result, const BoundaryLine& line, std::optional<double> depth) {
  const record::Header& header = result.header();
  ground_at(result, 0);  // says what is wrong with a file without fields
  Boundary boundary{line, depth, {}, {}, {}};
  boundary.most_warmed.resize(static_cast<std::size_t>(header.years));
  boundary.most_cooled.resize(static_cast<std::size_t>(header.years));
  const std::vector<PlanPoint> places = places_along(line.corners);
  std::vector<PlaceWeights> weights;
  for (const PlanPoint& place : places) weights.push_back(place_weights(header, place));
  const auto depths = depths_of(header, depth);
  for (const double time : result.snapshot_times()) {
    const GroundState state = ground_at(result, time);
    const auto year = std::min(static_cast<std::size_t>(time / seconds_per_year), boundary.most_warmed.size() - 1);
    for (std::size_t p = 0; p < places.size(); ++p) {
      const std::vector<double> profile = rise_profile(header, weights[p], state.rise);
      for (const auto& [z, w] : depths) {
        const double rise = w.weight[0] * profile[w.layer[0]] + w.weight[1] * profile[w.layer[1]];
        take({rise, time, places[p], z}, boundary.most_warmed[year], boundary.most_cooled[year]);
      }
    }
  }
  for (const auto* list : {&boundary.most_warmed, &boundary.most_cooled}) {
    for (const BoundaryChange& change : *list) {
      if (std::abs(change.rise) > std::abs(boundary.highest.rise)) boundary.highest = change;
    }
  }
  return boundary;
}

}  // namespace stillground::results
