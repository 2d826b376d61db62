#include "engine/field/layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <variant>

namespace stillground::field {

namespace {

std::vector<model::BoreSite> expand(const model::Grid& grid, double top, double depth) {
  std::vector<model::BoreSite> bores;
  for (int row = 0; row < grid.rows; ++row) {
    for (int column = 0; column < grid.columns; ++column) {
      bores.push_back({column * grid.spacing, row * grid.spacing, top, depth, 0});
    }
  }
  return bores;
}

}  // namespace

std::vector<model::BoreSite> sites(const model::Layout& layout, double top, double depth) {
  if (const auto* grid = std::get_if<model::Grid>(&layout)) return expand(*grid, top, depth);
  return std::get<model::Positions>(layout).sites;
}

double distance(const model::BoreSite& a, const model::BoreSite& b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

std::vector<double> nearest_distances(const std::vector<model::BoreSite>& bores) {
  if (bores.size() < 2) return {};
  std::vector<double> nearest(bores.size(), std::numeric_limits<double>::infinity());
  for (std::size_t i = 0; i < bores.size(); ++i) {
    for (std::size_t j = 0; j < bores.size(); ++j) {
      if (j != i) nearest[i] = std::min(nearest[i], distance(bores[i], bores[j]));
    }
  }
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
