#include <algorithm>
#include <cmath>

#include "tools/present/palette.hpp"
#include "tools/present/svg.hpp"
#include "validation/dossier/dossier.hpp"

namespace stillground::validation {

namespace {

double scaled(double value, bool log) {
  return log ? std::log10(value) : value;
}

present::Axis axis(const std::string& label, bool log, const present::Range& range) {
  return log ? present::decade_axis(label, range) : present::round_axis(label, range, 6);
}

present::Line drawn(const Curve& curve, const Plot& plot, std::size_t nth) {
  present::Line line;
  line.label = curve.label;
  line.stroke = present::side_by_side_strokes.at(nth % present::side_by_side_strokes.size());
  if (curve.is_reference) {
    line.stroke = {present::ink, 0, ""};  // marks without a line
    line.marker = nth % 2 == 0 ? present::Marker::hollow : present::Marker::filled;
  }
  for (const auto& [x, y] : curve.points) line.points.push_back({scaled(x, plot.log_x), scaled(y, plot.log_y)});
  // The name stands at the right-hand end: a series of ever finer steps comes from there.
  if (!line.points.empty() && line.points.front().x > line.points.back().x) {
    std::reverse(line.points.begin(), line.points.end());
  }
  return line;
}

}  // namespace

std::string picture(const Plot& plot, const std::string& id) {
  present::Panel panel;
  present::Range xs, ys;
  std::size_t ours = 0, references = 0;
  for (const Curve& curve : plot.curves) {
    panel.lines.push_back(drawn(curve, plot, curve.is_reference ? references++ : ours++));
    for (const present::Point& point : panel.lines.back().points) {
      xs.add(point.x);
      ys.add(point.y);
    }
  }
  panel.x = axis(plot.x, plot.log_x, xs);
  panel.y = axis(plot.y, plot.log_y, ys);
  const std::vector<std::string> key =
      references > 0 ? std::vector<std::string>{"Marks: the reference. Lines: ours."} : std::vector<std::string>{};
  return present::svg({id, plot.title, key, plot.title + ": " + plot.y + " against " + plot.x, {panel}});
}

}  // namespace stillground::validation
