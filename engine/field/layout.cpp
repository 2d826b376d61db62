#include "engine/field/layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <type_traits>
#include <variant>

#include "engine/field/plot.hpp"

namespace stillground::field {

namespace {

using Plan = std::vector<model::PlanPoint>;

Plan plan(const model::Grid& grid) {
  Plan points;
  for (int row = 0; row < grid.rows; ++row) {
    for (int column = 0; column < grid.columns; ++column) points.push_back({column * grid.spacing, row * grid.spacing});
  }
  return points;
}

Plan plan(const model::Staggered& rows) {
  const double between = rows.spacing * std::sqrt(3.0) / 2;
  Plan points;
  for (int row = 0; row < rows.rows; ++row) {
    for (int column = 0; column < rows.columns; ++column) {
      points.push_back({(column + (row % 2) / 2.0) * rows.spacing, row * between});
    }
  }
  return points;
}

Plan plan(const model::Line& line) {
  return plan(model::Grid{1, line.bores, line.spacing});
}

Plan plan(const model::LShape& shape) {
  Plan points = plan(model::Line{shape.along_x, shape.spacing});
  for (int i = 1; i < shape.along_y; ++i) points.push_back({0, i * shape.spacing});
  return points;
}

Plan plan(const model::UShape& shape) {
  Plan points = plan(model::LShape{shape.along_x, shape.along_y, shape.spacing});
  const double far = (shape.along_x - 1) * shape.spacing;
  for (int i = 1; i < shape.along_y; ++i) points.push_back({far, i * shape.spacing});
  return points;
}

Plan plan(const model::Ring& ring) {
  const double part = 2 * std::numbers::pi / ring.bores;
  const double radius = ring.spacing / (2 * std::sin(part / 2));
  Plan points;
  for (int i = 0; i < ring.bores; ++i) points.push_back({radius * std::cos(i * part), radius * std::sin(i * part)});
  return points;
}

Plan plan(const model::Fan& fan) {
  const bool all_round = fan.opening > 2 * std::numbers::pi * (1 - 1e-9);
  const int parts = all_round ? fan.rays : std::max(1, fan.rays - 1);
  Plan points;
  for (int ray = 0; ray < fan.rays; ++ray) {
    const double angle = fan.opening * ray / parts;
    for (int i = 0; i < fan.bores_per_ray; ++i) {
      const double far = fan.first + i * fan.spacing;
      points.push_back({far * std::cos(angle), far * std::sin(angle)});
    }
  }
  return points;
}

Plan plan(const model::Plot& plot) {
  return fill(plot);
}

}  // namespace

std::vector<model::BoreSite> sites(const model::Layout& layout, double top, double depth) {
  if (const auto* positions = std::get_if<model::Positions>(&layout)) return positions->sites;
  const Plan points = std::visit(
      [](const auto& shape) -> Plan {
        if constexpr (std::is_same_v<std::decay_t<decltype(shape)>, model::Positions>) {
          return {};
        } else {
          return plan(shape);
        }
      },
      layout);
  std::vector<model::BoreSite> bores;
  for (const auto& point : points) bores.push_back({point.x, point.y, top, depth, 0});
  return bores;
}

double distance(const model::BoreSite& a, const model::BoreSite& b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

std::vector<double> nearest_distances(const std::vector<model::BoreSite>& bores) {
  if (bores.size() < 2) return {};
  std::vector<double> nearest(bores.size(), std::numeric_limits<double>::infinity());  // squared
  for (std::size_t i = 0; i < bores.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const double x = bores[i].x - bores[j].x, y = bores[i].y - bores[j].y;
      nearest[i] = std::min(nearest[i], x * x + y * y);
      nearest[j] = std::min(nearest[j], x * x + y * y);
    }
  }
  for (double& distance : nearest) distance = std::sqrt(distance);
  return nearest;
}

double radius(const std::vector<model::BoreSite>& bores) {
  model::BoreSite centre;
  for (const auto& bore : bores) {
    centre.x += bore.x / static_cast<double>(bores.size());
    centre.y += bore.y / static_cast<double>(bores.size());
  }
  double largest = 0;
  for (const auto& bore : bores) largest = std::max(largest, distance(bore, centre));
  return largest;
}

}  // namespace stillground::field
