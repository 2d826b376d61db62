#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/config/layouts.hpp"
#include "engine/units/display.hpp"

namespace stillground::config {
namespace {

constexpr double least_advised = 3;  ///< [m]

void check_count(const Section& section, std::string_view leaf, std::size_t count) {
  if (count > most_bores) {
    section.where(leaf).refuse(fmt::format("{} bores are too many (allowed: up to {})", count, most_bores));
  }
}

/// Bores at `distance` must not overlap, nor should they stand close.
void check_distance(const Section& section, std::string_view leaf, double distance, double diameter, Context& context) {
  const Where where = section.where(leaf);
  if (distance < diameter) {
    where.refuse(fmt::format("{} is less than the bore's diameter of {}: bores would overlap", context.length(distance),
                             context.length(diameter)));
  }
  warn_of_close_bores(where.place, "the bores stand", distance, context);
}

/// The spacing of `bores` bores in all, which a lone one does not need.
double read_spacing(const Section& section, std::size_t bores, double diameter, Context& context) {
  const auto spacing = section.optional_quantity("spacing");
  if (bores == 1) return spacing.value_or(0);
  if (!spacing) section.where("spacing").refuse("missing (for example \"spacing: 6 m\")");
  check_distance(section, "spacing", *spacing, diameter, context);
  return *spacing;
}

std::size_t product(int a, int b) {
  return static_cast<std::size_t>(a) * static_cast<std::size_t>(b);
}

model::Fan read_fan(const Section& section, const model::Bore& bore, Context& context) {
  model::Fan fan;
  fan.rays = section.whole("rays");
  fan.bores_per_ray = section.whole("bores_per_ray");
  check_count(section, "rays", product(fan.rays, fan.bores_per_ray));
  fan.first = section.quantity("first");
  fan.spacing = read_spacing(section, static_cast<std::size_t>(fan.bores_per_ray), bore.diameter, context);
  const double degrees = section.number("opening");
  fan.opening = degrees * std::numbers::pi / 180;
  if (fan.rays == 1) return fan;
  if (degrees == 0) section.where("opening").refuse("several rays need an opening (allowed: above 0, up to 360)");
  const double between = fan.opening / (degrees == 360 ? fan.rays : fan.rays - 1);
  const double chord = 2 * fan.first * std::sin(std::min(between, std::numbers::pi) / 2);
  check_distance(section, "first", chord, bore.diameter, context);
  return fan;
}

}  // namespace

void warn_of_close_bores(const Place& place, const std::string& what, double distance, Context& context) {
  if (distance >= least_advised) return;
  const auto length = [&](double metres) { return units::text(metres, "m", 2, context.scenario.units); };
  context.warn(place, fmt::format("{} {} apart: bores so close exchange heat within days", what, length(distance)),
               fmt::format("the model is meant for {} and more; common practice, no source", length(least_advised)));
}

model::Layout read_shape(const std::string& shape, const Section& section, const model::Bore& bore, Context& context) {
  if (shape == "fan") return read_fan(section, bore, context);
  if (shape == "grid" || shape == "staggered") {
    const int rows = section.whole("rows"), columns = section.whole("columns");
    check_count(section, "rows", product(rows, columns));
    const double spacing = read_spacing(section, product(rows, columns), bore.diameter, context);
    if (shape == "grid") return model::Grid{rows, columns, spacing};
    return model::Staggered{rows, columns, spacing};
  }
  if (shape == "line" || shape == "ring") {
    const int bores = section.whole("bores");
    const double spacing = read_spacing(section, static_cast<std::size_t>(bores), bore.diameter, context);
    if (shape == "line") return model::Line{bores, spacing};
    return model::Ring{bores, spacing};
  }
  const int along_x = section.whole("along_x"), along_y = section.whole("along_y");
  const double spacing = read_spacing(section, product(along_x, along_y), bore.diameter, context);
  if (shape == "l_shape") return model::LShape{along_x, along_y, spacing};
  return model::UShape{along_x, along_y, spacing};
}

}  // namespace stillground::config
