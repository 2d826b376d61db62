#include <fmt/format.h>

#include "tools/present/palette.hpp"
#include "tools/results/eft_panel_parts.hpp"
#include "tools/results/energy_view.hpp"
#include "tools/results/report_figures.hpp"

namespace stillground::results {

namespace {

using namespace present;

double mwh(double joules) {
  return joules / joules_per_mwh;
}

Axis power_axis(const Panel& panel, const std::string& label) {
  Range range;
  range.add(0);
  for (const Line& line : panel.lines) {
    for (const Point& point : line.points) range.add(point.y);
  }
  return round_axis(label, range, 6);
}

Panel year_panel(const Source& source, const FluidSummary& summary) {
  const EnergySummary& energy = summary.energy;
  Panel panel;
  panel.title = "Electricity of each run-year";
  panel.x = run_year_axis(static_cast<int>(energy.years.size()), source.start);
  const auto add = [&](const Stroke& stroke, Marker marker, const char* name, auto get) {
    Line line{{}, stroke, marker, name};
    for (std::size_t y = 0; y < energy.years.size(); ++y) {
      line.points.push_back({static_cast<double>(y + 1), mwh(get(energy.years[y]))});
    }
    panel.lines.push_back(std::move(line));
  };
  using energy::Sum;
  add({every_year_ink, 3, ""}, Marker::filled, "all", [](const Sum& s) { return s.power; });
  if (energy.all.heating > energy.all.hot_water) {
    add({undisturbed_ink, 2.5, "9 5"}, Marker::none, "heating", [](const Sum& s) { return s.power_heating(); });
  }
  if (energy.all.hot_water > 0) {
    add({middle_ink, 2.5, "2 4"}, Marker::none, "hot water", [](const Sum& s) { return s.power_hot_water; });
  }
  if (energy.all.power_cooling > 0) {
    add({bore_ink, 2.5, "14 4 3 4"}, Marker::none, "cooling", [](const Sum& s) { return s.power_cooling; });
  }
  panel.y = power_axis(panel, "electricity [MWh a year]");
  return panel;
}

Panel month_panel(const FluidSummary& summary) {
  Panel panel;
  panel.title = "Electricity month by month";
  const int last = static_cast<int>(summary.years.size());
  panel.x.label = "month";
  panel.x.from = panel.x.to = 0;
  for (const int year : last > 1 ? std::vector<int>{1, last} : std::vector<int>{1}) {
    const Look& look = year == 1 ? first_look : last_look;
    Line line{{}, look.stroke, look.marker, fmt::format("year {}", year)};
    for (std::size_t m = 0; m < summary.months.size(); ++m) {
      if (summary.months[m].run_year != year) continue;
      const double x = static_cast<double>(line.points.size()) + 0.5;
      if (year == 1) {
        panel.x.ticks.push_back({x, month_name(summary.months[m].span.month)});
        panel.x.to += 1;
      }
      line.points.push_back({x, mwh(summary.energy.months[m].power)});
    }
    panel.lines.push_back(std::move(line));
  }
  panel.y = power_axis(panel, "electricity [MWh a month]");
  return panel;
}

}  // namespace

Figure energy_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing) {
  const EnergySummary& energy = summary.energy;
  const energy::Sum &first = energy.years.front(), &last = energy.years.back();
  Figure figure;
  figure.id = "energy";
  figure.footnotes = drawing.footnotes;
  figure.title = "Electricity of the heat pumps";
  figure.subtitle = {source.title};
  figure.description = fmt::format(
      "In run-year 1 the heat pumps take {:.1f} MWh of electricity at a seasonal performance of {:.2f}, in run-year {} "
      "{:.1f} MWh at {:.2f}.",
      mwh(first.power), first.performance(), energy.years.size(), mwh(last.power), last.performance());
  if (energy.years.size() > 1) figure.panels.push_back(year_panel(source, summary));
  figure.panels.push_back(month_panel(summary));
  return figure;
}

}  // namespace stillground::results
