#include <fmt/format.h>

#include <cmath>

#include "engine/base/paragraph.hpp"
#include "engine/units/display.hpp"
#include "tools/present/palette.hpp"
#include "tools/results/boundary.hpp"
#include "tools/results/phases.hpp"
#include "tools/results/temperature_scale.hpp"

namespace stillground::results {

namespace {

using present::Json;

std::string place_text(const record::Header& header, const BoundaryChange& change, UnitSystem system) {
  const auto metres = [&](double value) { return units::text(value, "m", 1, system); };
  return fmt::format("on {}, at x {}, y {}, {} deep", instant_text(header, change.time).substr(0, 10),
                     metres(change.at.x), metres(change.at.y), metres(change.depth));
}

present::Line line_of(const std::vector<BoundaryChange>& changes, const present::Line& look, UnitSystem system) {
  present::Line line = look;
  for (std::size_t y = 0; y < changes.size(); ++y) {
    line.points.push_back({static_cast<double>(y + 1), units::shown_in("K", system)(changes[y].rise)});
  }
  return line;
}

Json change_json(const record::Header& header, const BoundaryChange& change) {
  return {{"rise", present::quantity(change.rise, "K")},
          {"date", instant_text(header, change.time)},
          {"x", present::quantity(change.at.x, "m")},
          {"y", present::quantity(change.at.y, "m")},
          {"depth", present::quantity(change.depth, "m")}};
}

}  // namespace

std::string boundary_verdict(const record::Header& header, const Boundary& boundary, UnitSystem system) {
  const BoundaryChange& highest = boundary.highest;
  if (highest.rise == 0) return fmt::format("Along {} the ground does not change.", boundary.line.what);
  const std::string where =
      boundary.depth ? " " + units::text(*boundary.depth, "m", 1, system) + " deep" : ", at whatever depth,";
  return fmt::format("Along {} the ground{} changes by at most {}: it {} by that {}.", boundary.line.what, where,
                     units::text(std::abs(highest.rise), "K", 2, system), highest.rise > 0 ? "warms" : "cools",
                     place_text(header, highest, system));
}

present::Table boundary_table(const record::Header& header, const Boundary& boundary) {
  present::Table table{{{"run_year", "", "run-year"},
                        {"most_warmed", "K", "most warmed", 3},
                        {"most_warmed_date", "", "on"},
                        {"most_warmed_depth", "m", "depth", 1},
                        {"most_cooled", "K", "most cooled", 3},
                        {"most_cooled_date", "", "on"},
                        {"most_cooled_depth", "m", "depth", 1}},
                       {}};
  for (std::size_t y = 0; y < boundary.most_warmed.size(); ++y) {
    auto& row = table.rows.emplace_back();
    row.emplace_back(static_cast<long>(y + 1));
    for (const BoundaryChange& change : {boundary.most_warmed[y], boundary.most_cooled[y]}) {
      row.emplace_back(change.rise);
      row.emplace_back();
      row.emplace_back();
      if (change.rise == 0) continue;
      row[row.size() - 2] = instant_text(header, change.time).substr(0, 10);
      row.back() = change.depth;
    }
  }
  return table;
}

std::string boundary_text(const Source& source, const record::Header& header, const Boundary& boundary,
                          UnitSystem system) {
  std::string out = source.title + "\n" + source.file + "\n\n";
  out += wrapped(boundary_verdict(header, boundary, system), 100) + "\n\n";
  out += "Greatest warming and greatest cooling of each run-year, at the instants that the run kept\n";
  return out + present::text(present::in_system(boundary_table(header, boundary), system));
}

Json boundary_json(const Source& source, const record::Header& header, const Boundary& boundary) {
  Json corners = Json::array();
  for (const PlanPoint& corner : boundary.line.corners) corners.push_back({corner.x, corner.y});
  Json json = {{"verb", "slice"},
               {"file", source.file},
               {"title", source.title},
               {"method", source.method},
               {"boundary", {{"what", boundary.line.what}, {"units", "m"}, {"values", corners}}},
               {"verdict", boundary_verdict(header, boundary, UnitSystem::si)},
               {"highest", change_json(header, boundary.highest)}};
  if (boundary.depth) json["depth"] = present::quantity(*boundary.depth, "m");
  json["yearly"] = present::columns(boundary_table(header, boundary));
  return json;
}

present::Figure boundary_figure(const Source& source, const record::Header& header, const Boundary& boundary,
                                const outputs::Drawing& drawing) {
  present::Figure figure;
  figure.id = "boundary";
  figure.footnotes = drawing.footnotes;
  figure.title = "How far does the field reach?";
  figure.description = with_degree_signs(boundary_verdict(header, boundary, drawing.units));
  figure.subtitle = {source.title, figure.description};
  present::Panel panel;
  panel.title = "Greatest change along the line in each run-year";
  panel.x = present::run_year_axis(header.years, header.start);
  panel.marks = phase_marks(source.phases, source.start, header.years);
  panel.lines = {
      line_of(boundary.most_warmed, {{}, {present::middle_ink, 2.5, "8 5"}, present::Marker::hollow, "most\nwarmed"},
              drawing.units),
      line_of(boundary.most_cooled, {{}, {present::block_ink, 3, ""}, present::Marker::filled, "most\ncooled"},
              drawing.units)};
  present::Range range;
  range.add(0);
  for (const present::Line& line : panel.lines) {
    for (const present::Point& point : line.points) range.add(point.y);
  }
  panel.y = present::round_axis(fmt::format("change [{}]", drawing.units == UnitSystem::si ? "K" : "°F"),
                                present::with_room(range, 0.02), 8);
  figure.panels = {panel};
  return figure;
}

}  // namespace stillground::results
