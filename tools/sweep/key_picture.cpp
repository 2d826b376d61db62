#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>

#include "tools/present/axis.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"
#include "tools/results/temperature_scale.hpp"
#include "tools/sweep/picture_parts.hpp"

namespace stillground::sweep {

using namespace present;
using results::TemperatureScale;

namespace {

constexpr double axis_room = 560;  ///< of the tick labels side by side [px]

/// Where the values of a key stand: at their figures if all are numbers of one unit, else side by side.
struct Scale {
  std::string unit;        ///< of figures
  std::vector<double> at;  ///< [value]
  bool figures = true;
};

Scale scale_of(const sweep::Axis& varied) {
  Scale scale;
  for (const Value& value : varied.values) {
    const char* end_of_text = value.name.data() + value.name.size();
    double figure = 0;
    const auto [end, error] = std::from_chars(value.name.data(), end_of_text, figure);
    const std::string unit(end, end_of_text);
    const bool same = scale.at.empty() || unit == scale.unit;
    if (error != std::errc{} || !same || value.node.kind != config::Node::Kind::scalar) scale.figures = false;
    scale.unit = unit;
    scale.at.push_back(figure);
  }
  if (!scale.figures) {
    for (std::size_t i = 0; i < scale.at.size(); ++i) scale.at[i] = static_cast<double>(i + 1);
  }
  return scale;
}

present::Axis drawn_axis(const sweep::Axis& varied, const Scale& scale) {
  if (scale.figures) {
    Range range;
    range.add(scale.at);
    const std::string unit =
        scale.unit.empty() ? "" : fmt::format(" [{}]", scale.unit.substr(scale.unit.find_first_not_of(' ')));
    return round_axis(varied.path + unit, with_room(range, 0.04), 8);
  }
  const double count = static_cast<double>(scale.at.size());
  present::Axis axis{varied.path, 0.5, count + 0.5, {}};
  for (std::size_t i = 0; i < scale.at.size(); ++i) {
    const std::string shown = fitted(varied.values[i].name, label_size, axis_room / count);
    axis.ticks.push_back({scale.at[i], count > 12 ? "" : shown});
  }
  return axis;
}

Panel eft_panel(const Told& told, std::size_t axis, bool least, const TemperatureScale& temperature) {
  const sweep::Axis& varied = told.points.plan().axes[axis];
  const Scale scale = scale_of(varied);
  const double nothing = std::numeric_limits<double>::quiet_NaN();
  std::vector<double> low(scale.at.size(), nothing), high = low;
  Panel panel;
  panel.title = least ? "Least EFT of all years" : "Greatest EFT of all years";
  Range range;
  for (std::size_t i = 0; i < told.state.size(); ++i) {
    const Record* record = told.state[i].shown();
    if (record == nullptr || !record->failed.empty()) continue;
    const std::size_t value = told.points.walk().choice(i + 1)[axis];
    const double eft = temperature(least ? record->decision.eft_min : record->decision.eft_max);
    if (!std::isfinite(eft)) continue;
    range.add(eft);
    low[value] = std::fmin(low[value], eft);
    high[value] = std::fmax(high[value], eft);
    panel.lines.push_back(point_line({scale.at[value], eft}, *record));
  }
  Band band{{}, {}, {}, every_year_fill, 1, {grid_ink, 1, ""}};
  std::vector<std::size_t> order(scale.at.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return scale.at[a] < scale.at[b]; });
  for (const std::size_t value : order) {
    band.x.push_back(scale.at[value]);
    band.low.push_back(low[value]);
    band.high.push_back(high[value]);
  }
  if (scale.figures) panel.bands.push_back(std::move(band));
  panel.levels = eft_levels(told, least, temperature, range);
  panel.x = drawn_axis(varied, scale);
  panel.y = round_axis(fmt::format("EFT [{}]", temperature.unit()), with_room(range, 0.04), 6);
  return panel;
}

}  // namespace

Figure key_figure(const Told& told, std::size_t axis, const outputs::Drawing& drawing) {
  const TemperatureScale temperature{drawing.units};
  const std::string& path = told.points.plan().axes[axis].path;
  Figure figure;
  figure.id = fmt::format("key-{}", axis + 1);
  figure.title = "EFT against " + path;
  figure.subtitle = {"Hourly means of the hours with flow. Points at one value differ in the other keys.",
                     counts_text(told) + "."};
  figure.keys = method_keys(told);
  figure.footnotes = drawing.footnotes;
  figure.panels = {eft_panel(told, axis, false, temperature), eft_panel(told, axis, true, temperature)};
  figure.description = fmt::format("Greatest and least entering fluid temperature of each point against {}. {}.", path,
                                   counts_text(told));
  return figure;
}

}  // namespace stillground::sweep
