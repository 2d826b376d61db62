#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/config/coordinates.hpp"
#include "engine/config/layouts.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// An outline with the file lines of its corners.
struct Corners {
  model::Outline points;
  std::string file;
  std::vector<int> lines;
};

/// Twice the signed area of a triangle.
double turn(const model::PlanPoint& a, const model::PlanPoint& b, const model::PlanPoint& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool cross(const model::PlanPoint& a, const model::PlanPoint& b, const model::PlanPoint& c, const model::PlanPoint& d) {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

[[noreturn]] void refuse_crossing(const Corners& corners, std::size_t first, std::size_t second,
                                  const std::string& key) {
  Place place;
  place.file = corners.file;
  place.line = corners.lines[second];
  throw InputError(place, key,
                   fmt::format("the edge from here crosses the one that begins in line {}; give the corners in their "
                               "order",
                               corners.lines[first]));
}

void check_edges(const Corners& corners, const Where& asked) {
  const auto& points = corners.points;
  const std::size_t n = points.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      if (!cross(points[i], points[(i + 1) % n], points[j], points[(j + 1) % n])) continue;
      refuse_crossing(corners, i, j, asked.key);
    }
  }
  double twice = 0;
  for (std::size_t i = 0; i < n; ++i) twice += turn(points[0], points[i], points[(i + 1) % n]);
  if (std::abs(twice) < 1)
    asked.refuse(fmt::format("the outline of {} encloses less than half a square metre", corners.file));
}

model::Outline read_outline(const Section& section, Context& context) {
  const Csv csv = read_input(section, "outline", context);
  const Where asked = section.where("outline");
  if (csv.rows() < 3) asked.refuse(fmt::format("{} has {} corners (needed: at least 3)", csv.file, csv.rows()));
  if (csv.rows() > 1000) asked.refuse(fmt::format("{} has {} corners (allowed: up to 1000)", csv.file, csv.rows()));
  const Corners corners{read_coordinates(csv, asked), csv.file, csv.lines};
  check_edges(corners, asked);
  return corners.points;
}

/// Smallest upright rectangle around an outline.
struct Frame {
  double west, east, south, north;  ///< [m]

  explicit Frame(const model::Outline& outline) {
    const auto [w, e] = std::minmax_element(outline.begin(), outline.end(), [](auto& a, auto& b) { return a.x < b.x; });
    const auto [s, n] = std::minmax_element(outline.begin(), outline.end(), [](auto& a, auto& b) { return a.y < b.y; });
    west = w->x, east = e->x, south = s->y, north = n->y;
  }
  bool within(double distance, const Frame& other) const {
    return west - distance <= other.east && other.west <= east + distance && south - distance <= other.north &&
           other.south <= north + distance;
  }
};

/// What lies far off was measured from another origin.
void check_beside(const model::Outline& outline, const model::KeepClear& part, const Where& asked) {
  if (Frame(part.outline).within(part.setback, Frame(outline))) return;
  asked.refuse(
      fmt::format("lies outside the plot, farther off than its setback of {:g} m (are both measured from one origin?)",
                  part.setback));
}

std::vector<model::KeepClear> read_keep_clear(const Section& plot, const model::Outline& outline, double setback,
                                              Context& context) {
  std::vector<model::KeepClear> parts;
  if (!plot.has("keep_clear")) return parts;
  const Node& list = plot.node("keep_clear");
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const Section part(list.items[i], "field.plot.keep_clear[]", fmt::format("field.plot.keep_clear[{}]", i + 1),
                       list.items[i].place);
    parts.push_back({read_outline(part, context), part.optional_quantity("setback").value_or(setback)});
    check_beside(outline, parts.back(), part.where("outline"));
  }
  return parts;
}

model::Land read_land(const Section& section, Context& context) {
  model::Land land;
  land.outline = read_outline(section, context);
  land.setback = section.quantity("setback");
  land.keep_clear = read_keep_clear(section, land.outline, land.setback, context);
  return land;
}

}  // namespace

model::Land read_land_of_positions(const Section& section, Context& context) {
  for (const char* leaf : {"spacing", "pattern", "angle"}) {
    section.forbid(leaf, "has no use beside field.positions, which says where the bores stand");
  }
  return read_land(section, context);
}

model::Plot read_plot(const Section& section, const model::Bore& bore, Context& context) {
  model::Plot plot;
  plot.land = read_land(section, context);
  plot.spacing = section.quantity("spacing");
  if (plot.spacing < bore.diameter) {
    section.where("spacing").refuse(fmt::format("{} is less than the bore's diameter of {}: bores would overlap",
                                                context.length(plot.spacing), context.length(bore.diameter)));
  }
  warn_of_close_bores(section.where("spacing").place, "the bores stand", plot.spacing, context);
  plot.pattern =
      section.word("pattern") == "staggered" ? model::Plot::Pattern::staggered : model::Plot::Pattern::square;
  plot.angle = section.number("angle") * std::numbers::pi / 180;
  return plot;
}

}  // namespace stillground::config
