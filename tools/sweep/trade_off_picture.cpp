#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/units/display.hpp"
#include "tools/present/palette.hpp"
#include "tools/sweep/picture_parts.hpp"
#include "tools/sweep/ranking.hpp"

namespace stillground::sweep {

using namespace present;

namespace {

const Stroke point_stroke{side_by_side_strokes[0].colour, 0, ""};
const Stroke unbeaten_stroke = side_by_side_strokes[1];
constexpr std::size_t most_named = 12;
constexpr double thousand = 1000;  ///< costs are drawn in these

/// The least that must be spent for as much margin: stairs from point to point.
std::vector<Point> stairs(const std::vector<Point>& points) {
  std::vector<Point> corners;
  for (const Point& point : points) {
    if (!corners.empty()) corners.push_back({corners.back().x, point.y});
    corners.push_back(point);
  }
  return corners;
}

std::string choice_text(const Told& told, std::size_t number) {
  std::string text;
  const auto choice = told.points.walk().choice(number);
  for (std::size_t axis = 0; axis < choice.size(); ++axis) {
    const sweep::Axis& varied = told.points.plan().axes[axis];
    text += fmt::format("{}{} {}", axis == 0 ? "" : ", ", varied.path, varied.values[choice[axis]].name);
  }
  return text;
}

}  // namespace

Line point_line(const Point& at, const Record& record) {
  return {{at}, point_stroke, record.decision.method == "march" ? Marker::filled : Marker::hollow, ""};
}

std::vector<Key> method_keys(const Told& told) {
  std::vector<Key> keys;
  const auto any = [&](const char* method) {
    return std::any_of(told.state.begin(), told.state.end(), [&](const Standing& standing) {
      return standing.shown() != nullptr && standing.shown()->failed.empty() &&
             standing.shown()->decision.method == method;
    });
  };
  if (any("march")) keys.push_back({point_stroke, Marker::filled, "marched"});
  if (any("screening")) keys.push_back({point_stroke, Marker::hollow, "screened: an estimate without a march"});
  return keys;
}

std::vector<Level> eft_levels(const Told& told, bool least, const results::TemperatureScale& scale, Range& range) {
  const auto& axes = told.points.plan().axes;
  const auto varies = [](const sweep::Axis& axis) { return axis.path.starts_with("limits"); };
  if (std::any_of(axes.begin(), axes.end(), varies)) return {};
  std::vector<Level> levels;
  for (std::size_t i = 0; i < told.state.size() && levels.empty(); ++i) {
    if (!told.state[i].point.failed.empty()) continue;
    for (const model::Limit& limit : told.points.scenario(i + 1).limits) {
      const bool on_hours = limit.quantity == model::Limit::Quantity::eft && limit.over == model::Limit::Over::hour;
      if (!on_hours || (limit.side == model::Limit::Side::least) != least) continue;
      const double at = scale(limit.value), reach = 0.5 * range.span();
      if (at > range.low() - reach && at < range.high() + reach) range.add(at);
      levels.push_back({at, limit_stroke, fmt::format("limit {}", scale.plain(limit.value))});
    }
    break;
  }
  return levels;
}

Figure trade_off_figure(const Told& told, const outputs::Drawing& drawing) {
  const Plan& plan = told.points.plan();
  const units::Shown kelvin = units::shown_in("K", drawing.units), metres = units::shown_in("m", drawing.units);
  const auto at = [&](const Record& record) {
    const double spent_on = spent(plan, record);
    return Point{kelvin(record.decision.margin), plan.prices ? spent_on / thousand : metres(spent_on)};
  };
  Figure figure;
  figure.id = "trade-off";
  figure.title = plan.prices ? "What more margin costs" : "What more margin takes in metres";
  figure.subtitle = {"Margin: from the nearest limit to what came closest to it, negative beyond it.",
                     counts_text(told) + "."};
  figure.keys = method_keys(told);
  figure.footnotes = drawing.footnotes;
  Panel panel;
  panel.title = "All points";
  Range across, up;
  for (const Standing& standing : told.state) {
    const Record* record = standing.shown();
    if (record == nullptr || !record->failed.empty() || !std::isfinite(record->decision.margin)) continue;
    const Point point = at(*record);
    across.add(point.x);
    up.add(point.y);
    panel.lines.push_back(point_line(point, *record));
  }
  const std::vector<std::size_t> front = unbeaten(plan, told.state);
  std::vector<Point> places;
  for (const std::size_t number : front) places.push_back(at(*told.state[number - 1].shown()));
  const std::size_t every = front.size() / most_named + 1;
  for (std::size_t i = 0; i < front.size(); ++i) {
    const bool named = i % every == 0 || i + 1 == front.size();
    if (named) {
      panel.notes.push_back(
          {places[i], fmt::format("{}", front[i]), unbeaten_stroke.colour, true, Note::Side::below, false});
      figure.description += fmt::format("Point {} ({}). ", front[i], choice_text(told, front[i]));
    }
  }
  panel.lines.insert(panel.lines.begin(), Line{stairs(places), unbeaten_stroke, Marker::none, ""});
  figure.keys.push_back(
      {unbeaten_stroke, Marker::none,
       plan.prices ? "points that none beats, by their numbers: no other has as much margin for less money"
                   : "points that none beats, by their numbers: no other has as much margin for fewer metres"});
  across.add(0);
  if (!panel.lines.empty()) panel.marks.push_back({0, "at the limit", limit_ink});
  panel.x = round_axis(fmt::format("margin [{}]", units::printed_unit(kelvin.units)), with_room(across, 0.05), 8);
  panel.y =
      round_axis(plan.prices ? "cost [thousands]" : fmt::format("to drill [{}]", metres.units), with_room(up, 0.06), 6);
  figure.panels = {panel};
  figure.description = "Points that none beats, by rising margin: " + figure.description;
  return figure;
}

std::vector<Picture> pictures_of(const Told& told, const outputs::Drawing& drawing) {
  std::vector<Picture> pictures;
  const auto& axes = told.points.plan().axes;
  for (std::size_t axis = 0; axis < axes.size(); ++axis) {
    std::string name = axes[axis].path;
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '/' || c == '[' || c == ']'; }, '_');
    pictures.push_back({fmt::format("eft_by_{}.svg", name), key_figure(told, axis, drawing)});
  }
  pictures.push_back({"trade_off.svg", trade_off_figure(told, drawing)});
  return pictures;
}

}  // namespace stillground::sweep
