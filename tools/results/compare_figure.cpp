#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "tools/present/palette.hpp"
#include "tools/results/celsius.hpp"
#include "tools/results/compare_view.hpp"
#include "tools/results/limit_view.hpp"

namespace stillground::results {

namespace {

using namespace present;

/// The limits of all layouts for one side, each value once.
std::vector<LimitOutcome> limits_of(const std::vector<Layout>& layouts, bool is_least) {
  std::vector<LimitOutcome> limits;
  for (const Layout& layout : layouts) {
    for (const LimitOutcome& outcome : layout.limits) {
      const auto same = [&](const LimitOutcome& other) {
        return other.limit.name == outcome.limit.name && other.limit.value == outcome.limit.value;
      };
      if (outcome.limit.is_least == is_least && std::none_of(limits.begin(), limits.end(), same))
        limits.push_back(outcome);
    }
  }
  return limits;
}

Panel extreme_panel(const std::vector<Layout>& layouts, bool is_least) {
  Panel panel;
  Range range;
  int longest = 1;
  panel.title = is_least ? "Least EFT of each run-year" : "Greatest EFT of each run-year";
  for (std::size_t i = 0; i < layouts.size(); ++i) {
    Line line{{},
              side_by_side_strokes[i % side_by_side_strokes.size()],
              i % 2 == 0 ? Marker::filled : Marker::hollow,
              layouts[i].name};
    for (const YearFluid& year : layouts[i].fluid) {
      line.points.push_back({static_cast<double>(year.run_year), celsius(is_least ? year.eft.least : year.eft.most)});
      range.add(line.points.back().y);
    }
    longest = std::max(longest, layouts[i].years);
    panel.lines.push_back(line);
  }
  panel.x = run_year_axis(longest);
  panel.levels = limit_levels(limits_of(layouts, is_least), range);
  panel.y = round_axis("EFT [°C]", range, 8);
  return panel;
}

}  // namespace

Figure compare_figure(const std::vector<Layout>& layouts, const outputs::Drawing& drawing) {
  Figure figure;
  figure.id = "compare";
  figure.footnotes = drawing.footnotes;
  figure.title = "Layouts side by side";
  figure.subtitle = {"Extremes of the entering fluid temperature, hourly means of the hours with flow."};
  for (const Layout& layout : layouts) {
    figure.description += fmt::format("{}: {} bores, {:.0f} m to drill, EFT {:.1f} to {:.1f} °C in the last run-year. ",
                                      layout.name, layout.bores, layout.drill_length,
                                      celsius(layout.fluid.back().eft.least), celsius(layout.fluid.back().eft.most));
  }
  figure.panels = {extreme_panel(layouts, false), extreme_panel(layouts, true)};
  return figure;
}

}  // namespace stillground::results
