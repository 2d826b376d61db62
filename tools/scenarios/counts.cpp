#include "tools/scenarios/counts.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <map>
#include <sstream>

#include "engine/config/read.hpp"
#include "engine/config/tree.hpp"
#include "engine/field/layout.hpp"
#include "tools/scenarios/variation_parts.hpp"

namespace stillground::scenarios {

namespace {

constexpr int most_bores = 2000;
constexpr double least_plot_spacing = 4.5;  ///< 15 ft (common practice, no source) [m]

[[noreturn]] void refuse(const std::string& option, const std::string& text) {
  throw InputError(Place{}, option, text);
}

int whole(const std::string& option, std::string text) {
  std::erase(text, ' ');
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || value < 1 || value > most_bores) {
    refuse(option, fmt::format("\"{}\" is not a count of bores (1 to {})", text, most_bores));
  }
  return value;
}

/// How a shape takes more bores: `least` of them, then `each` at a time along one key.
struct Growth {
  std::string key;       ///< "field.line.bores"
  int fixed = 0;         ///< bores besides those that the key counts
  int each = 1;          ///< bores that one more of the key brings
  int least = 1;         ///< of the key
  bool partial = false;  ///< a last row may be begun
};

struct GrowthOf {
  Growth operator()(const model::Grid& grid) const { return {"field.grid.rows", 0, grid.columns, 1, true}; }
  Growth operator()(const model::Staggered& rows) const { return {"field.staggered.rows", 0, rows.columns, 1, true}; }
  Growth operator()(const model::Line&) const { return {"field.line.bores"}; }
  Growth operator()(const model::LShape& shape) const { return {"field.l_shape.along_y", shape.along_x - 1, 1, 2}; }
  Growth operator()(const model::UShape& shape) const { return {"field.u_shape.along_y", shape.along_x - 2, 2, 2}; }
  Growth operator()(const model::Ring&) const { return {"field.ring.bores", 0, 1, 3}; }
  Growth operator()(const model::Fan& fan) const { return {"field.fan.bores_per_ray", 0, fan.rays}; }
  Growth operator()(const model::Plot&) const { return {}; }
  Growth operator()(const model::Positions&) const { return {}; }
};

bool wanted(const VaryRequest& request, int count, int own) {
  const int from = request.from.empty() ? (own + 1) / 2 : whole("--from", request.from);
  const int to = request.to.empty() ? 2 * own : whole("--to", request.to);
  const int step = request.step.empty() ? 1 : whole("--step", request.step);
  if (!request.values.empty()) {
    std::istringstream list(request.values);
    for (std::string one; std::getline(list, one, ',');) {
      if (whole("--values", one) == count) return true;
    }
    return false;
  }
  return count >= from && count <= to && count % step == 0;
}

int count_of(const model::Scenario& scenario) {
  return static_cast<int>(field::sites(scenario.layout, scenario.bore.top, scenario.bore.depth).size());
}

model::Scenario grown(const VaryRequest& request, const Growth& growth, int count) {
  const int of_key = (count - growth.fixed + growth.each - 1) / growth.each;
  model::Scenario scenario = config::read_scenario(request.scenario, request.units, {},
                                                   {config::plain_override(growth.key, std::to_string(of_key))});
  auto sites = field::sites(scenario.layout, scenario.bore.top, scenario.bore.depth);
  if (static_cast<int>(sites.size()) == count) return scenario;
  sites.resize(static_cast<std::size_t>(count));  // the last row is begun, not filled
  scenario.layout = model::Positions{.sites = std::move(sites)};
  return scenario;
}

Variation shape_counts(const VaryRequest& request, const model::Scenario& base) {
  const Growth growth = std::visit(GrowthOf{}, base.layout);
  const int own = count_of(base), in_series = base.flow.in_series;
  Variation variation{.own = static_cast<double>(own)};
  for (int count = 1; count <= most_bores; ++count) {
    const int along = count - growth.fixed;
    const bool fills = along >= growth.least * (growth.partial ? 1 : growth.each) &&
                       (growth.partial || along % growth.each == 0) && count % in_series == 0;
    if (fills && wanted(request, count, own)) variation.values.push_back(count);
  }
  variation.scenario = [=, values = variation.values](std::size_t place) {
    return grown(request, growth, static_cast<int>(values[place]));
  };
  if (growth.partial)
    variation.notes.emplace_back("Bores fill the rows one after the other; the last may be begun only.");
  return variation;
}

/// The scenario's field with a plot of land in its place.
config::Override plot_block(const VaryRequest& request, double spacing) {
  const std::string outline = std::filesystem::absolute(request.land).string();
  std::string quoted = "\"";
  for (const char c : outline) quoted += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
  const std::string text = fmt::format("field: {{plot: {{outline: {}\", setback: {}, spacing: {:.6g} m}}}}", quoted,
                                       request.setback.empty() ? "3 m" : request.setback, spacing);
  return {"field", {}, config::read_tree(text, "--within").find("field")->value};
}

Variation plot_counts(const VaryRequest& request, const model::Scenario& base) {
  const int own = count_of(base);
  const auto at_spacing = [=](double spacing) {
    const auto given = request.land.empty()
                           ? config::plain_override("field.plot.spacing", fmt::format("{:.6g} m", spacing))
                           : plot_block(request, spacing);
    return config::read_scenario(request.scenario, request.units, {}, {given});
  };
  model::Scenario filled = at_spacing(least_plot_spacing);
  std::map<int, double> widest;
  for (int tenths = 45; tenths <= 500; ++tenths) {
    std::get<model::Plot>(filled.layout).spacing = tenths / 10.0;
    const int count = count_of(filled);
    if (count == 0) break;
    if (wanted(request, count, own)) widest[count] = tenths / 10.0;
  }
  Variation variation{.own = static_cast<double>(own)};
  for (const auto& [count, spacing] : widest) {
    variation.values.push_back(count);
    variation.spacings.push_back(spacing);
  }
  variation.scenario = [=, at = variation.spacings](std::size_t place) { return at_spacing(at[place]); };
  variation.notes.emplace_back(
      "Each count stands on the land at the widest spacing that brings it, 4.5 m at the least.");
  return variation;
}

}  // namespace

std::optional<SpacedShape> spaced_shape(const model::Layout& layout) {
  struct Shape {
    std::optional<SpacedShape> operator()(const model::Grid& s) const { return SpacedShape{"grid", s.spacing}; }
    std::optional<SpacedShape> operator()(const model::Staggered& s) const {
      return SpacedShape{"staggered", s.spacing};
    }
    std::optional<SpacedShape> operator()(const model::Line& s) const { return SpacedShape{"line", s.spacing}; }
    std::optional<SpacedShape> operator()(const model::LShape& s) const { return SpacedShape{"l_shape", s.spacing}; }
    std::optional<SpacedShape> operator()(const model::UShape& s) const { return SpacedShape{"u_shape", s.spacing}; }
    std::optional<SpacedShape> operator()(const model::Ring& s) const { return SpacedShape{"ring", s.spacing}; }
    std::optional<SpacedShape> operator()(const model::Fan& s) const { return SpacedShape{"fan", s.spacing}; }
    std::optional<SpacedShape> operator()(const model::Plot&) const { return std::nullopt; }
    std::optional<SpacedShape> operator()(const model::Positions&) const { return std::nullopt; }
  };
  return std::visit(Shape{}, layout);
}

Variation counts(const VaryRequest& request, const model::Scenario& base) {
  if (!request.land.empty() || std::holds_alternative<model::Plot>(base.layout)) return plot_counts(request, base);
  if (std::holds_alternative<model::Positions>(base.layout)) {
    refuse("--vary count", "surveyed bores fill no shape (give a plot of land: --within)");
  }
  return shape_counts(request, base);
}

}  // namespace stillground::scenarios
