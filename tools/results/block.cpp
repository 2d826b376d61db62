#include "tools/results/block.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

#include "engine/field/superposition.hpp"

namespace stillground::results {

namespace {

/// Gauss-Legendre, four points on [-1, 1] (Abramowitz & Stegun 1964, table 25.4).
struct GaussPoint {
  double at = 0;
  double weight = 0;
};
constexpr std::array<GaussPoint, 4> gauss = {{{-0.861136311594052575, 0.347854845137453857},
                                              {-0.339981043584856265, 0.652145154862546143},
                                              {0.339981043584856265, 0.652145154862546143},
                                              {0.861136311594052575, 0.347854845137453857}}};

/// A point of the edge and its outward normal times the length of edge that it stands for [m].
struct EdgePoint {
  PlanPoint at;
  PlanPoint normal;
};

int pieces_for(double length, double longest) {
  return std::max(1, static_cast<int>(std::ceil(length / longest)));
}

void add_side(std::vector<EdgePoint>& edge, const PlanPoint& a, const PlanPoint& b, double margin) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const PlanPoint along{(b.x - a.x) / length, (b.y - a.y) / length};
  const PlanPoint out{along.y, -along.x};
  const int pieces = pieces_for(length, margin / 2);
  const double half = length / pieces / 2;
  for (int i = 0; i < pieces; ++i) {
    for (const GaussPoint& g : gauss) {
      const double s = (2 * i + 1 + g.at) * half;
      const double share = g.weight * half;
      edge.push_back(
          {{a.x + along.x * s + out.x * margin, a.y + along.y * s + out.y * margin}, {out.x * share, out.y * share}});
    }
  }
}

/// The round corner about `centre`, from the direction `from` on through `angle` [rad].
void add_corner(std::vector<EdgePoint>& edge, const PlanPoint& centre, double from, double angle, double margin) {
  const int pieces = pieces_for(angle * margin, margin / 2);
  const double half = angle / pieces / 2;
  for (int i = 0; i < pieces; ++i) {
    for (const GaussPoint& g : gauss) {
      const double direction = from + (2 * i + 1 + g.at) * half;
      const PlanPoint out{std::cos(direction), std::sin(direction)};
      const double share = g.weight * half * margin;
      edge.push_back({{centre.x + margin * out.x, centre.y + margin * out.y}, {out.x * share, out.y * share}});
    }
  }
}

/// Direction of the outward normal of the side from a to b, a hull's inside being at its left.
double outward(const PlanPoint& a, const PlanPoint& b) {
  return std::atan2(a.x - b.x, b.y - a.y);
}

std::vector<EdgePoint> edge_of(const WidenedHull& hull) {
  std::vector<EdgePoint> edge;
  const std::size_t n = hull.corners.size();
  if (n == 1) {
    add_corner(edge, hull.corners[0], 0, 2 * std::numbers::pi, hull.margin);
    return edge;
  }
  for (std::size_t i = 0; i < n; ++i) {
    const PlanPoint& here = hull.corners[i];
    const PlanPoint& next = hull.corners[(i + 1) % n];
    const double from = outward(hull.corners[(i + n - 1) % n], here);
    double angle = outward(here, next) - from;
    if (angle < 0) angle += 2 * std::numbers::pi;
    add_corner(edge, here, from, angle, hull.margin);
    add_side(edge, here, next, hull.margin);
  }
  return edge;
}

/// Adds factor x integral of rise(r) r dr from `from` to `to` to the cells' weights; no node lies between the two.
void add_radial(std::span<double> cells, std::span<const double> r, double from, double to, double factor) {
  const double half = (to - from) / 2;
  for (const GaussPoint& g : gauss) {
    const double at = from + (1 + g.at) * half;
    for (const field::RadialWeight& w : field::radial_weights(r, at)) {
      cells[w.cell] += factor * g.weight * half * at * w.weight;
    }
  }
}

/// Adds one bore's share: the integral of rise(|x - bore|) over the hull, as the edge integral of
/// F(R) (x - bore).n / R^2 with F(R) the integral of rise(r) r dr from 0 to R.
void add_bore(std::span<double> cells, std::span<const double> r, const PlanPoint& bore,
              const std::vector<EdgePoint>& edge, double factor) {
  std::vector<double> reached(r.size() + 1, 0.0);  // [k]: from edge points beyond node k - 1 and not beyond node k
  for (const EdgePoint& e : edge) {
    const PlanPoint way{e.at.x - bore.x, e.at.y - bore.y};
    const double distance = std::hypot(way.x, way.y);
    const double share = factor * (way.x * e.normal.x + way.y * e.normal.y) / (distance * distance);
    const auto beyond = static_cast<std::size_t>(std::upper_bound(r.begin(), r.end(), distance) - r.begin());
    reached[beyond] += share;
    add_radial(cells, r, beyond == 0 ? 0 : r[beyond - 1], distance, share);
  }
  double further = 0;
  for (std::size_t k = r.size(); k > 0; --k) {  // whole stretches between nodes, once for all edge points beyond them
    further += reached[k];
    if (further != 0) add_radial(cells, r, k == 1 ? 0 : r[k - 2], r[k - 1], further);
  }
}

PlanWeights no_weights(const record::Header& header) {
  const auto groups = static_cast<std::size_t>(header.groups);
  return {groups, header.r.size(), std::vector<double>(groups * header.r.size(), 0.0)};
}

std::span<double> cells_of(PlanWeights& plan, int group) {
  return std::span<double>(plan.values).subspan(static_cast<std::size_t>(group) * plan.cells, plan.cells);
}

}  // namespace

PlanWeights block_weights(const WidenedHull& block, const record::Header& header) {
  PlanWeights plan = no_weights(header);
  const std::vector<EdgePoint> edge = edge_of(block);
  for (const record::BoreRow& bore : header.bores) {
    add_bore(cells_of(plan, bore.group), header.r, {bore.x, bore.y}, edge, 1 / block.area());
  }
  return plan;
}

PlanWeights point_weights(const std::vector<PlanPoint>& points, const record::Header& header) {
  PlanWeights plan = no_weights(header);
  const double share = 1 / static_cast<double>(points.size());
  for (const record::BoreRow& bore : header.bores) {
    const std::span<double> cells = cells_of(plan, bore.group);
    for (const PlanPoint& point : points) {
      const double distance = std::hypot(point.x - bore.x, point.y - bore.y);
      for (const field::RadialWeight& w : field::radial_weights(header.r, distance)) cells[w.cell] += share * w.weight;
    }
  }
  return plan;
}

std::vector<double> layer_weights(std::span<const double> faces, double top, double toe) {
  std::vector<double> weights;
  double sum = 0;
  for (std::size_t z = 0; z + 1 < faces.size(); ++z) {
    weights.push_back(std::max(0.0, std::min(faces[z + 1], toe) - std::max(faces[z], top)));
    sum += weights.back();
  }
  for (double& weight : weights) weight /= sum;
  return weights;
}

double weighted_mean(std::span<const float> rise, const PlanWeights& plan, std::span<const double> layers) {
  assert(rise.size() == plan.groups * layers.size() * plan.cells);
  double sum = 0;
  for (std::size_t g = 0; g < plan.groups; ++g) {
    for (std::size_t z = 0; z < layers.size(); ++z) {
      if (layers[z] == 0) continue;
      const std::span<const float> line = rise.subspan((g * layers.size() + z) * plan.cells, plan.cells);
      double mean = 0;
      for (std::size_t i = 0; i < plan.cells; ++i)
        mean += plan.values[g * plan.cells + i] * static_cast<double>(line[i]);
      sum += layers[z] * mean;
    }
  }
  return sum;
}

}  // namespace stillground::results
