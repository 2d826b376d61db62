#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

#include "engine/units/display.hpp"
#include "tools/present/palette.hpp"
#include "tools/results/compare_view.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/method_note.hpp"
#include "tools/results/phases.hpp"

namespace stillground::results {

namespace {

using namespace present;

bool is_screened(const Layout& layout) {
  return !method_note(layout.method).empty();
}

/// Whether this limit judges the curves of these panels: the EFT of an hour, on this side.
bool is_drawn(const LimitOutcome& outcome, bool is_least) {
  return !outcome.by_month && !outcome.by_minute && outcome.limit.quantity == "eft" &&
         outcome.limit.is_least == is_least;
}

bool has_limit(const Layout& layout, const LimitOutcome& limit) {
  return std::any_of(layout.limits.begin(), layout.limits.end(), [&](const LimitOutcome& other) {
    return is_drawn(other, limit.limit.is_least) && other.limit.value == limit.limit.value;
  });
}

/// The limits of all layouts that judge these curves, each value once, with the names of those that have it unless all
/// do.
std::vector<Level> levels_of(const std::vector<Layout>& layouts, bool is_least, const TemperatureScale& scale,
                             Range& range) {
  std::vector<Level> levels;
  for (std::size_t i = 0; i < layouts.size(); ++i) {
    for (const LimitOutcome& limit : layouts[i].limits) {
      const auto has_it = [&](const Layout& layout) { return has_limit(layout, limit); };
      const auto before = layouts.begin() + static_cast<std::ptrdiff_t>(i);
      if (!is_drawn(limit, is_least) || std::any_of(layouts.begin(), before, has_it)) continue;
      levels.push_back(limit_levels({limit}, Quantity::eft, scale, range).front());
      if (std::all_of(layouts.begin(), layouts.end(), has_it)) continue;
      for (const Layout& layout : layouts) {
        if (has_it(layout)) levels.back().label += "\n" + layout.name;
      }
    }
  }
  return levels;
}

const Stroke& stroke_of(std::size_t layout) {
  return side_by_side_strokes[layout % side_by_side_strokes.size()];
}

Marker marker_of(std::size_t layout) {
  return layout % 2 == 0 ? Marker::filled : Marker::hollow;
}

/// The day on which all begin; none if they differ.
std::optional<Date> common_start(const std::vector<Layout>& layouts) {
  const Date& first = layouts.front().start;
  const bool common =
      std::all_of(layouts.begin(), layouts.end(), [&](const Layout& layout) { return layout.start == first; });
  return common ? std::optional(first) : std::nullopt;
}

/// The phases of all layouts, each date once, with the names of those that have it unless all do.
std::vector<Mark> marks_of(const std::vector<Layout>& layouts) {
  std::vector<Mark> marks;
  for (const Layout& layout : layouts) {
    for (Mark mark : phase_marks(layout.phases, layout.start, layout.years)) {
      const auto has_it = [&](const Layout& other) {
        const auto others = phase_marks(other.phases, other.start, other.years);
        return std::any_of(others.begin(), others.end(), [&](const Mark& one) { return one.label == mark.label; });
      };
      if (!std::all_of(layouts.begin(), layouts.end(), has_it)) mark.label = layout.name + ": " + mark.label;
      const auto same = [&](const Mark& other) { return other.label == mark.label; };
      if (std::none_of(marks.begin(), marks.end(), same)) marks.push_back(std::move(mark));
    }
  }
  return marks;
}

Panel extreme_panel(const std::vector<Layout>& layouts, bool is_least, const TemperatureScale& scale) {
  Panel panel;
  Range range;
  int longest = 1;
  panel.title = is_least ? "Least EFT of each run-year" : "Greatest EFT of each run-year";
  for (std::size_t i = 0; i < layouts.size(); ++i) {
    const std::string name = layouts[i].name + (is_screened(layouts[i]) ? "\nscreening" : "");
    Line line{{}, stroke_of(i), marker_of(i), name};
    for (const YearFluid& year : layouts[i].fluid) {
      line.points.push_back({static_cast<double>(year.run_year), scale(is_least ? year.eft.least : year.eft.most)});
      range.add(line.points.back().y);
    }
    longest = std::max(longest, layouts[i].years);
    panel.lines.push_back(line);
  }
  panel.x = run_year_axis(longest, common_start(layouts));
  panel.marks = marks_of(layouts);
  panel.levels = levels_of(layouts, is_least, scale, range);
  panel.y = round_axis(fmt::format("EFT [{}]", scale.unit()), with_room(range, 0.02), 8);
  return panel;
}

std::string depths_text(const Layout& layout, UnitSystem system) {
  const std::string most = units::text(layout.most_depth, "m", 0, system);
  const std::string least = units::text(layout.least_depth, "m", 0, system);
  return least == most ? most : least + " to " + most;
}

/// How it does by all its limits, whatever they are on.
std::string standing(const Layout& layout, const TemperatureScale& scale) {
  const double margin = margin_of(layout.limits);
  if (layout.limits.empty()) return "no limits set";
  if (std::isnan(margin)) return "no limit could be judged";
  if (const LimitOutcome* first = first_broken(layout.limits)) {
    return fmt::format("first beyond {} {} {}, by up to {}", first->limit.name, first->by_month ? "in" : "on",
                       first_beyond_day(*first, layout.start), scale.difference(-margin, 2));
  }
  return "all limits kept, " + scale.difference(margin, 2) + " to spare";
}

std::string key_text(const Layout& layout, const TemperatureScale& scale) {
  return fmt::format("{}: {}. {} {} of {}, {} to drill; {}.{}", layout.name, layout.title, layout.bores,
                     layout.bores == 1 ? "bore" : "bores", depths_text(layout, scale.units),
                     units::text(layout.drill_length, "m", 0, scale.units), standing(layout, scale),
                     is_screened(layout) ? " " + method_note(layout.method) : "");
}

}  // namespace

Figure compare_figure(const std::vector<Layout>& layouts, const outputs::Drawing& drawing) {
  const TemperatureScale scale{drawing.units};
  Figure figure;
  figure.id = "compare";
  figure.footnotes = drawing.footnotes;
  figure.title = "Layouts side by side";
  figure.subtitle = {"Extremes of the entering fluid temperature, hourly means of the hours with flow."};
  for (std::size_t i = 0; i < layouts.size(); ++i) {
    const Layout& layout = layouts[i];
    const Spread& last = layout.fluid.back().eft;
    figure.keys.push_back({stroke_of(i), marker_of(i), key_text(layout, scale)});
    figure.description += fmt::format("{} EFT {:.1f} to {} in the last run-year. ", figure.keys.back().text,
                                      scale(last.least), scale.text(last.most, 1));
  }
  figure.panels = {extreme_panel(layouts, false, scale), extreme_panel(layouts, true, scale)};
  return figure;
}

}  // namespace stillground::results
