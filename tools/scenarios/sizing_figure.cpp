#include <fmt/format.h>

#include <algorithm>

#include "engine/units/display.hpp"
#include "tools/present/palette.hpp"
#include "tools/scenarios/sizing_words.hpp"

namespace stillground::scenarios {

namespace {

/// Of the looks that could be, in the units shown.
std::vector<present::Point> points_of(const Sized& sized, const std::vector<Look>& looks, UnitSystem system) {
  const units::Shown value = units::shown_in(sized.variation.units, system), margin = units::shown_in("K", system);
  std::vector<present::Point> points;
  for (const Look& look : looks) {
    if (look.failure.empty())
      points.push_back({value(sized.variation.values[look.place]), margin(look.decision.margin)});
  }
  return points;
}

present::Axis axis_of(const std::string& label, const std::vector<present::Point>& points,
                      double present::Point::*which) {
  present::Range range;
  for (const present::Point& point : points) range.add(point.*which);
  return present::round_axis(label, present::with_room(range, 0.03), 8);
}

}  // namespace

present::Figure sizing_figure(const Sized& sized, UnitSystem system, const std::vector<std::string>& footnotes) {
  const auto screened = points_of(sized, sized.sizing.screenings, system);
  const auto marched = points_of(sized, sized.sizing.marches, system);
  std::vector<present::Point> all = screened;
  all.insert(all.end(), marched.begin(), marched.end());
  all.push_back({all.empty() ? 0 : all.front().x, 0});
  const units::Shown value = units::shown_in(sized.variation.units, system);
  const std::string of =
      fmt::format("{} [{}]", word_of(sized.what), sized.variation.units.empty() ? "bores" : value.units);
  const std::string degrees = system == UnitSystem::us ? "margin [°F]" : "margin [K]";
  present::Panel panel{.title = "Margin to the nearest limit",
                       .x = axis_of(of, all, &present::Point::x),
                       .y = axis_of(degrees, all, &present::Point::y),
                       .bands = {},
                       .levels = {{0, present::limit_stroke, "limit"}},
                       .lines = {},
                       .notes = {}};
  const present::Stroke screened_stroke = present::side_by_side_strokes[1];
  const present::Stroke marched_stroke{present::side_by_side_strokes[0].colour, 0, ""};
  panel.lines.push_back({screened, screened_stroke, present::Marker::hollow, ""});
  panel.lines.push_back({marched, marched_stroke, present::Marker::filled, ""});
  const Sizing& sizing = sized.sizing;
  const std::string found =
      sizing.answer ? fmt::format("Least {} found: {}", word_of(sized.what), value_text(sized, *sizing.answer, system))
                    : std::string("No least value: ") + shape_word(sizing.shape);
  return {
      .id = "size",
      .title = sized.scenario.title,
      .subtitle = {found},
      .description = found + ". Margin to the nearest limit against the value, above naught where all limits are kept.",
      .panels = {panel},
      .keys = {{screened_stroke, present::Marker::hollow, "screened"},
               {marched_stroke, present::Marker::filled, "marched: what decides"}},
      .footnotes = footnotes};
}

}  // namespace stillground::scenarios
