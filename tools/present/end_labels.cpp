#include "tools/present/end_labels.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tools/present/labels.hpp"
#include "tools/present/panel.hpp"

namespace stillground::present {

namespace {

constexpr double label_gap = 16;   ///< between the plot and the names at its right
constexpr double label_line = 21;  ///< from one line of text to the next
constexpr double widest_label = 220;

/// A name at the right of the plot.
struct EndLabel {
  double y = 0;  ///< where its line ends
  bool leads = true;
  std::string text;
  std::string colour;
};

/// The last point that is not a gap; none: nothing to name.
std::optional<Point> end_of(const Line& line) {
  const auto last =
      std::find_if(line.points.rbegin(), line.points.rend(), [](const Point& p) { return std::isfinite(p.y); });
  if (last == line.points.rend() || line.label.empty()) return std::nullopt;
  return *last;
}

bool ends_early(const Point& end, const Plot& plot) {
  return plot.x(end.x) < plot.right() - 0.25 * plot.width;
}

std::vector<EndLabel> end_labels(const Panel& panel, const Plot& plot) {
  std::vector<EndLabel> labels;
  for (const Level& level : panel.levels) {
    const double inside = std::clamp(level.y, panel.y.from, panel.y.to);
    const std::string arrow = level.y > panel.y.to ? " ↑" : level.y < panel.y.from ? " ↓" : "";
    labels.push_back({plot.y(inside), arrow.empty(), level.label + arrow, level.stroke.colour});
  }
  for (const Line& line : panel.lines) {
    const std::optional<Point> end = end_of(line);
    if (end && !ends_early(*end, plot)) labels.push_back({plot.y(end->y), true, line.label, line.stroke.colour});
  }
  return labels;
}

void draw_end_label(Canvas& canvas, const EndLabel& label, double centre, const Plot& plot) {
  if (label.leads && std::abs(centre - label.y) > 5) {
    canvas.line({plot.right() + 2, label.y}, {plot.right() + label_gap - 3, centre}, {label.colour, 1, ""});
  }
  const std::vector<std::string> lines = lines_of(label.text);
  const double first = centre - label_line * (static_cast<double>(lines.size()) - 1) / 2 + 6;
  for (std::size_t l = 0; l < lines.size(); ++l) {
    canvas.text({plot.right() + label_gap, first + label_line * static_cast<double>(l)},
                fitted(lines[l], label_size, widest_label), {label_size, label.colour, "start", false});
  }
}

}  // namespace

double right_margin(const Figure& figure) {
  double widest = 80;
  for (const Panel& panel : figure.panels) {
    for (const Level& level : panel.levels) widest = std::max(widest, text_width(level.label + " ↑", label_size));
    for (const Line& line : panel.lines) widest = std::max(widest, text_width(line.label, label_size));
  }
  return label_gap + 10 + std::min(widest, widest_label);
}

void draw_end_labels(Canvas& canvas, const Panel& panel, const Plot& plot) {
  const std::vector<EndLabel> labels = end_labels(panel, plot);
  std::vector<Wanted> wanted;
  for (const EndLabel& label : labels) {
    wanted.push_back({label.y, label_line * static_cast<double>(lines_of(label.text).size()) + 4});
  }
  const std::vector<double> centres = spread(wanted, plot.top - 12, plot.bottom() + 12);
  for (std::size_t i = 0; i < labels.size(); ++i) draw_end_label(canvas, labels[i], centres[i], plot);
  for (const Line& line : panel.lines) {
    const std::optional<Point> end = end_of(line);
    if (!end || !ends_early(*end, plot)) continue;
    canvas.text({plot.x(end->x) + 12, plot.y(end->y) + 6}, fitted(line.label, label_size, widest_label),
                {label_size, line.stroke.colour, "start", false});
  }
}

}  // namespace stillground::present
