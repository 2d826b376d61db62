#include "tools/results/slice_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/units/display.hpp"
#include "tools/results/celsius.hpp"

namespace stillground::results {

namespace {

using present::Json;

struct Node {
  std::size_t i = 0, j = 0;
};

Node extreme(const Slice& slice, bool least) {
  Node found;
  for (std::size_t j = 0; j < slice.y.size(); ++j) {
    for (std::size_t i = 0; i < slice.x.size(); ++i) {
      const double here = slice.temperature(i, j), best = slice.temperature(found.i, found.j);
      if (least ? here < best : here > best) found = {i, j};
    }
  }
  return found;
}

/// The greatest change on the edges that the ground goes on beyond, which says how much lies outside the cut [K].
double edge_change(const Slice& slice) {
  const std::size_t nx = slice.x.size(), ny = slice.y.size();
  double most = 0;
  const auto look = [&](std::size_t i, std::size_t j) { most = std::max(most, std::abs(slice.rise[j * nx + i])); };
  for (std::size_t j = 0; j < ny; ++j) look(0, j), look(nx - 1, j);
  for (std::size_t i = 0; i < nx; ++i) {
    if (slice.cut.depth) look(i, 0);
    look(i, ny - 1);
  }
  return most;
}

std::string node_text(const Slice& slice, const Node& node, UnitSystem system) {
  const PlanPoint at = slice.place(node.i, node.j);
  const auto metres = [&](double value) { return units::text(value, "m", 1, system); };
  std::string text = fmt::format(
      "{} (changed by {}) at x {}, y {}", units::text(celsius(slice.temperature(node.i, node.j)), "degC", 2, system),
      units::text(slice.rise[node.j * slice.x.size() + node.i], "K", 2, system), metres(at.x), metres(at.y));
  if (!slice.cut.depth) text += fmt::format(", {} deep", metres(slice.y[node.j]));
  return text;
}

Json node_json(const Slice& slice, const Node& node) {
  const PlanPoint at = slice.place(node.i, node.j);
  return {{"temperature", present::quantity(celsius(slice.temperature(node.i, node.j)), "degC")},
          {"rise", present::quantity(slice.rise[node.j * slice.x.size() + node.i], "K")},
          {"x", present::quantity(at.x, "m")},
          {"y", present::quantity(at.y, "m")},
          {"depth", present::quantity(slice.depth(node.j), "m")}};
}

bool is_between(const record::Header& header, double time) {
  const Date day = plus_days(header.start, static_cast<long>(time / seconds_per_day));
  return day.day != 1 && day != header.start;
}

}  // namespace

std::string cut_text(const Cut& cut, UnitSystem system) {
  if (cut.depth) return "at " + units::text(*cut.depth, "m", 1, system) + " depth";
  const units::Shown shown = units::shown_in("m", system);
  return fmt::format("from ({}, {}) to ({}, {}) {}", fixed(shown(cut.from.x), 1), fixed(shown(cut.from.y), 1),
                     fixed(shown(cut.to.x), 1), fixed(shown(cut.to.y), 1), shown.units);
}

std::string instant_text(const record::Header& header, double time) {
  return iso_hour(header.start, time / seconds_per_hour);
}

present::Table slice_table(const Slice& slice) {
  present::Table table{{{.name = "x", .units = "m", .on_the_map = true},
                        {.name = "y", .units = "m", .on_the_map = true},
                        {"depth", "m"},
                        {"temperature", "degC"},
                        {"rise", "K"}},
                       {}};
  for (std::size_t j = 0; j < slice.y.size(); ++j) {
    for (std::size_t i = 0; i < slice.x.size(); ++i) {
      const PlanPoint at = slice.place(i, j);
      table.rows.push_back(
          {at.x, at.y, slice.depth(j), celsius(slice.temperature(i, j)), slice.rise[j * slice.x.size() + i]});
    }
  }
  return table;
}

std::string slice_text(const Source& source, const record::Header& header, const Slice& slice, UnitSystem system) {
  std::string out = source.title + "\n" + source.file + "\n\n";
  out += fmt::format("Ground temperature {} on {}\n", cut_text(slice.cut, system), instant_text(header, slice.time));
  if (slice.cut.depth) {
    out += fmt::format("  undisturbed   {}\n", units::text(celsius(slice.undisturbed.front()), "degC", 2, system));
  }
  out += fmt::format("  coldest       {}\n", node_text(slice, extreme(slice, true), system));
  out += fmt::format("  warmest       {}\n", node_text(slice, extreme(slice, false), system));
  out += fmt::format("  at its edges  changed by up to {}\n\n", units::text(edge_change(slice), "K", 2, system));
  if (is_between(header, slice.time)) {
    out += "The instant lies between two that the run kept: read straight between them.\n";
  }
  return out + "--plot draws it, --csv writes every point.\n";
}

Json slice_json(const Source& source, const record::Header& header, const Slice& slice) {
  Json json = {
      {"verb", "slice"},
      {"file", source.file},
      {"title", source.title},
      {"method", source.method},
      {"date", instant_text(header, slice.time)},
      {"time",
       {{"value", slice.time / seconds_per_hour}, {"units", "hours since " + iso(header.start) + " 00:00:00"}}}};
  if (slice.cut.depth) {
    json["depth"] = present::quantity(*slice.cut.depth, "m");
    json["undisturbed"] = present::quantity(celsius(slice.undisturbed.front()), "degC");
  } else {
    const Cut& cut = slice.cut;
    json["section"] = {{"units", "m"}, {"values", {cut.from.x, cut.from.y, cut.to.x, cut.to.y}}};
  }
  json["coldest"] = node_json(slice, extreme(slice, true));
  json["warmest"] = node_json(slice, extreme(slice, false));
  json["edge_change"] = present::quantity(edge_change(slice), "K");
  json["points"] = present::columns(slice_table(slice));
  return json;
}

}  // namespace stillground::results
