#include "engine/config/coordinates.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/base/quote.hpp"

namespace stillground::config {
namespace {

/// National grids number up to some 1e7 m northwards from the equator, and put a zone's number before their eastings.
constexpr double farthest = 1e8;
/// Across one site [m]. Rows farther apart have another origin, or a slip in a digit.
constexpr double widest = 10e3;

}  // namespace

std::vector<model::PlanPoint> read_coordinates(const Csv& csv, const Where& asked) {
  const std::size_t x = csv.need("x", asked), y = csv.need("y", asked);
  const units::Conversion x_to_metre = csv.conversion(x, units::Dimension::length);
  const units::Conversion y_to_metre = csv.conversion(y, units::Dimension::length);
  const auto coordinate = [&](std::size_t row, std::size_t column, const units::Conversion& to_metre) {
    const double value = csv.number(row, column, to_metre);
    if (std::abs(value) > farthest) {
      csv.where(row, column)
          .refuse(fmt::format("{} is out of range (allowed: -{:g} km to {:g} km)", quote(csv.cell(row, column)),
                              farthest / 1e3, farthest / 1e3));
    }
    return value;
  };
  std::vector<model::PlanPoint> points;
  for (std::size_t row = 0; row < csv.rows(); ++row) {
    points.push_back({coordinate(row, x, x_to_metre), coordinate(row, y, y_to_metre)});
    const double off = std::hypot(points.back().x - points.front().x, points.back().y - points.front().y);
    if (off > widest) {
      csv.where(row, x).refuse(fmt::format(
          "this point lies {:.0f} km from the one in line {} (allowed: up to {:g} km); are both measured from one "
          "origin?",
          off / 1e3, csv.lines.front(), widest / 1e3));
    }
  }
  return points;
}

}  // namespace stillground::config
