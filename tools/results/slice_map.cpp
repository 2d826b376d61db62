#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/units/display.hpp"
#include "tools/results/celsius.hpp"
#include "tools/results/slice_view.hpp"
#include "tools/results/temperature_scale.hpp"

namespace stillground::results {

namespace {

constexpr double on_the_line = 0.3;  ///< nearer than that a bore stands on a section [m]

/// The bores within half the usual distance of neighbours from an upright cut.
void add_section_bores(const record::Header& header, const Slice& slice, present::GroundMap& map) {
  const Cut& cut = slice.cut;
  const double length = slice.x.back(), reach = ground_block(header.bores).margin;
  const double ux = (cut.to.x - cut.from.x) / length, uy = (cut.to.y - cut.from.y) / length;
  for (const record::BoreRow& bore : header.bores) {
    const double along = (bore.x - cut.from.x) * ux + (bore.y - cut.from.y) * uy;
    const double aside = std::abs((bore.y - cut.from.y) * ux - (bore.x - cut.from.x) * uy);
    if (aside > reach || along < 0 || along > length) continue;
    map.bores.push_back({{along, bore.top}, bore.top + bore.depth, aside > on_the_line});
  }
}

}  // namespace

std::vector<double> map_values(const Slice& slice, bool rise, UnitSystem system) {
  const units::Shown shown = rise ? units::shown_in("K", system) : units::shown_in("degC", system);
  std::vector<double> values;
  for (std::size_t j = 0; j < slice.y.size(); ++j) {
    for (std::size_t i = 0; i < slice.x.size(); ++i) {
      values.push_back(shown(rise ? slice.rise[j * slice.x.size() + i] : celsius(slice.temperature(i, j))));
    }
  }
  return values;
}

present::GroundMap slice_map(const Source& source, const record::Header& header, const Slice& slice, bool rise,
                             const std::vector<double>& values, const outputs::Drawing& drawing) {
  const TemperatureScale scale{drawing.units};
  present::GroundMap map;
  map.id = "slice";
  map.units = drawing.units;
  map.footnotes = drawing.footnotes;
  map.title = rise ? "Change of the ground's temperature" : "Ground temperature";
  map.upright = !slice.cut.depth;
  map.subtitle = {source.title,
                  fmt::format("{}, on {}.", cut_text(slice.cut, drawing.units), instant_text(header, slice.time))};
  map.subtitle.back().front() = map.upright ? 'F' : 'A';
  if (map.upright) map.subtitle.back() += " Depth and distance have scales of their own.";
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  const std::string unit = rise && drawing.units == UnitSystem::si ? "K" : scale.unit();
  map.description = fmt::format("{} {} Between {} and {} {}.", map.title, map.subtitle.back(), fixed(*least, 1),
                                fixed(*most, 1), unit);
  map.quantity = rise ? fmt::format("change [{}]", unit) : fmt::format("[{}]", unit);
  map.x = slice.x;
  map.y = slice.y;
  map.levels = present::round_levels(values);
  if (map.upright) {
    add_section_bores(header, slice, map);
    return map;
  }
  for (const record::BoreRow& bore : header.bores) map.bores.push_back({{bore.x, bore.y}});
  for (const record::PlanCorner& corner : header.land) map.outline.push_back({corner.x, corner.y});
  map.outline_text = "outline of the plot";
  return map;
}

}  // namespace stillground::results
