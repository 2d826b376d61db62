#include "engine/field/plot.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillground::field {

namespace {

constexpr int pushes = 10;      ///< positions of the lattice tried along and across
constexpr double slack = 1e-9;  ///< of a setback that is kept to round-off [m]

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
  const long rows = std::lround(std::floor((box.v_high - box.v_low) / lattice.across)) + 1;
  const long columns = std::lround(std::floor((box.u_high - box.u_low) / lattice.along)) + 2;
  for (long row = 0; row < rows; ++row) {
    const double shift = lattice.shifts && row % 2 != 0 ? -0.5 : 0.0;
    for (long column = 0; column < columns; ++column) {
      const double u = box.u_low + (static_cast<double>(column) + push_u + shift) * lattice.along;
      const auto point = lattice.to_plan(u, box.v_low + (static_cast<double>(row) + push_v) * lattice.across);
      if (may_stand(plot, point)) points.push_back(point);
    }
  }
  return points;
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

bool may_stand(const model::Plot& plot, const model::PlanPoint& point) {
  const bool on_edge = distance_to(plot.outline, point) <= slack;
  if (!on_edge && !inside(plot.outline, point)) return false;
  if (distance_to(plot.outline, point) < plot.setback - slack) return false;
  return std::none_of(plot.keep_clear.begin(), plot.keep_clear.end(), [&](const model::KeepClear& part) {
    return inside(part.outline, point) || distance_to(part.outline, point) < part.setback - slack;
  });
}

double area(const model::Outline& outline) {
  double twice = 0;
  edges(outline, [&](const auto& a, const auto& b) { twice += a.x * b.y - b.x * a.y; });
  return std::abs(twice) / 2;
}

std::vector<model::PlanPoint> fill(const model::Plot& plot) {
  const Lattice lattice = lattice_of(plot);
  const Box box = box_of(plot.outline, lattice);
  // Rows that keep the setback from the box's own sides come first: they fill a rectangle best.
  const double first_u = std::fmod(plot.setback / lattice.along, 1.0);
  const double first_v = std::fmod(plot.setback / lattice.across, 1.0);
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

}  // namespace stillground::field
