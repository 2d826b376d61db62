#include "engine/field/plot.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillground::field {

namespace {

constexpr int pushes = 10;      ///< positions of the lattice tried along and across
constexpr double slack = 1e-6;  ///< of a setback that is kept to round-off of a national grid's coordinates [m]

/// Calls each(from, to) for every edge.
template <class Each>
void edges(const model::Outline& outline, Each&& each) {
  for (std::size_t i = 0; i < outline.size(); ++i) each(outline[i], outline[(i + 1) % outline.size()]);
}

double distance_to_edge(const model::PlanPoint& p, const model::PlanPoint& a, const model::PlanPoint& b) {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double length2 = dx * dx + dy * dy;
  const double part = length2 > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - a.x - part * dx, p.y - a.y - part * dy);
}

/// A lattice along and across its rows; u along, v across.
struct Lattice {
  double cosine = 1, sine = 0;
  double along = 0, across = 0;  ///< steps [m]
  bool shifts = false;           ///< every second row by half a step

  model::PlanPoint to_plan(double u, double v) const { return {cosine * u - sine * v, sine * u + cosine * v}; }
  model::PlanPoint from_plan(const model::PlanPoint& p) const {
    return {cosine * p.x + sine * p.y, cosine * p.y - sine * p.x};
  }
};

Lattice lattice_of(const model::Plot& plot) {
  const bool staggered = plot.pattern == model::Plot::Pattern::staggered;
  return {std::cos(plot.angle), std::sin(plot.angle), plot.spacing,
          plot.spacing * (staggered ? std::sqrt(3.0) / 2 : 1.0), staggered};
}

struct Box {
  double u_low = std::numeric_limits<double>::infinity(), u_high = -u_low, v_low = u_low, v_high = -u_low;
};

Box box_of(const model::Outline& outline, const Lattice& lattice) {
  Box box;
  for (const auto& corner : outline) {
    const auto turned = lattice.from_plan(corner);
    box.u_low = std::min(box.u_low, turned.x);
    box.u_high = std::max(box.u_high, turned.x);
    box.v_low = std::min(box.v_low, turned.y);
    box.v_high = std::max(box.v_high, turned.y);
  }
  return box;
}

/// The bores of the lattice pushed by parts of its steps.
std::vector<model::PlanPoint> standing(const model::Plot& plot, const Lattice& lattice, const Box& box, double push_u,
                                       double push_v) {
  std::vector<model::PlanPoint> points;
  const long rows = std::lround(std::floor((box.v_high - box.v_low + slack) / lattice.across)) + 1;
  const long columns = std::lround(std::floor((box.u_high - box.u_low + slack) / lattice.along)) + 2;
  for (long row = 0; row < rows; ++row) {
    const double shift = lattice.shifts && row % 2 != 0 ? -0.5 : 0.0;
    for (long column = 0; column < columns; ++column) {
      const double u = box.u_low + (static_cast<double>(column) + push_u + shift) * lattice.along;
      const auto point = lattice.to_plan(u, box.v_low + (static_cast<double>(row) + push_v) * lattice.across);
      if (may_stand(plot.land, point)) points.push_back(point);
    }
  }
  return points;
}

model::Outline moved(model::Outline outline, const model::PlanPoint& by) {
  for (auto& corner : outline) corner = {corner.x + by.x, corner.y + by.y};
  return outline;
}

/// The plot measured from its first corner. What turns a lattice multiplies coordinates, and those of a national grid
/// would leave no digits for a setback.
model::Plot local(model::Plot plot) {
  const model::PlanPoint back{-plot.land.outline.front().x, -plot.land.outline.front().y};
  plot.land.outline = moved(plot.land.outline, back);
  for (auto& part : plot.land.keep_clear) part.outline = moved(part.outline, back);
  return plot;
}

/// The lattice's bores in coordinates of the plot's first corner.
std::vector<model::PlanPoint> most_standing(const model::Plot& plot) {
  const Lattice lattice = lattice_of(plot);
  const Box box = box_of(plot.land.outline, lattice);
  // Rows that keep the setback from the box's own sides come first: they fill a rectangle best.
  const double first_u = std::fmod(plot.land.setback / lattice.along, 1.0);
  const double first_v = std::fmod(plot.land.setback / lattice.across, 1.0);
  std::vector<model::PlanPoint> best;
  for (int i = 0; i < pushes; ++i) {
    for (int j = 0; j < pushes; ++j) {
      const double push_u = std::fmod(first_u + static_cast<double>(j) / pushes, 1.0);
      const double push_v = std::fmod(first_v + static_cast<double>(i) / pushes, 1.0);
      auto points = standing(plot, lattice, box, push_u, push_v);
      if (points.size() > best.size()) best = std::move(points);
    }
  }
  return best;
}

}  // namespace

bool inside(const model::Outline& outline, const model::PlanPoint& point) {
  bool odd = false;
  edges(outline, [&](const auto& a, const auto& b) {
    if ((a.y > point.y) == (b.y > point.y)) return;
    if (point.x < a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
  });
  return odd;
}

double distance_to(const model::Outline& outline, const model::PlanPoint& point) {
  double least = std::numeric_limits<double>::infinity();
  edges(outline, [&](const auto& a, const auto& b) { least = std::min(least, distance_to_edge(point, a, b)); });
  return least;
}

bool may_stand(const model::Land& land, const model::PlanPoint& point) {
  const double off = distance_to(land.outline, point);
  if (off > slack && !inside(land.outline, point)) return false;
  if (off < land.setback - slack) return false;
  return std::none_of(land.keep_clear.begin(), land.keep_clear.end(), [&](const model::KeepClear& part) {
    return inside(part.outline, point) || distance_to(part.outline, point) < part.setback - slack;
  });
}

double area(const model::Outline& outline) {
  if (outline.empty()) return 0;
  const model::PlanPoint o = outline.front();  // from a corner: products of a national grid's coordinates lose digits
  double twice = 0;
  edges(outline, [&](const auto& a, const auto& b) { twice += (a.x - o.x) * (b.y - o.y) - (b.x - o.x) * (a.y - o.y); });
  return std::abs(twice) / 2;
}

std::vector<model::PlanPoint> fill(const model::Plot& plot) {
  std::vector<model::PlanPoint> points = most_standing(local(plot));
  const model::PlanPoint& first = plot.land.outline.front();
  for (auto& point : points) point = {point.x + first.x, point.y + first.y};
  return points;
}

}  // namespace stillground::field
