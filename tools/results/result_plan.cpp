#include <fmt/format.h>

#include <algorithm>

#include "engine/units/display.hpp"
#include "tools/results/phases.hpp"
#include "tools/results/plan.hpp"
#include "tools/results/report_figures.hpp"

namespace stillground::results {

present::SitePlan result_plan(const record::Header& header, const outputs::Drawing& drawing) {
  const std::vector<double> later = later_starts(header.bores), nearest = nearest_distances(header.bores);
  present::SitePlan plan;
  plan.id = "plan";
  plan.title = "The bores from above";
  plan.units = drawing.units;
  plan.footnotes = drawing.footnotes;
  std::vector<std::size_t> counts(later.size() + 1);
  for (const record::BoreRow& bore : header.bores) {
    const auto phase =
        static_cast<std::size_t>(std::upper_bound(later.begin(), later.end(), bore.start) - later.begin());
    ++counts[phase];
    plan.bores.push_back(
        {{bore.x, bore.y}, static_cast<int>(phase), false, {fmt::format("{}", plan.bores.size() + 1)}});
  }
  for (std::size_t p = 0; p < counts.size(); ++p) {
    const std::string from = p == 0 ? "the start" : phase_name(later[p - 1], header.start).substr(11);
    plan.phase_texts.push_back(fmt::format("works from {}: {} bore{}", from, counts[p], counts[p] == 1 ? "" : "s"));
  }
  plan.subtitle = {fmt::format("{} bore{}, {} to drill", header.bores.size(), header.bores.size() == 1 ? "" : "s",
                               units::text(header.drill_length, "m", 0, drawing.units))};
  if (!nearest.empty()) {
    plan.subtitle.back() +=
        fmt::format(", {} apart at the nearest",
                    units::text(*std::min_element(nearest.begin(), nearest.end()), "m", 2, drawing.units));
  }
  plan.description = "The site from above: " + plan.subtitle.back() + ".";
  if (!header.land.empty()) {
    plan.plot.emplace();
    for (const record::PlanCorner& corner : header.land) plan.plot->outline.push_back({corner.x, corner.y});
  }
  return plan;
}

}  // namespace stillground::results
