#include "tools/present/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "tools/present/canvas.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

constexpr double picture_width = 900;
constexpr double left_margin = 78;
constexpr double plot_height = 300;
constexpr double above_plot = 84;  ///< the panel's title and the name of its y axis
constexpr double below_plot = 62;  ///< tick labels and the name of its x axis
constexpr double label_size = 17;
constexpr double label_gap = 16;   ///< between the plot and the names at its right
constexpr double label_line = 21;  ///< from one line of text to the next
constexpr double widest_label = 220;
constexpr double text_margin = 20;  ///< of the titles
constexpr double title_size = 25;
constexpr double subtitle_size = 18;

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

double right_margin(const Figure& figure) {
  double widest = 80;
  for (const Panel& panel : figure.panels) {
    for (const Level& level : panel.levels) widest = std::max(widest, text_width(level.label + " ↑", label_size));
    for (const Line& line : panel.lines) widest = std::max(widest, text_width(line.label, label_size));
  }
  return label_gap + 10 + std::min(widest, widest_label);
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

void draw_axes(Canvas& canvas, const Panel& panel, const Plot& plot) {
  for (const Tick& tick : panel.y.ticks) {
    const double y = plot.y(tick.at);
    canvas.line({plot.left, y}, {plot.right(), y}, {grid_ink, 1, ""});
    canvas.text({plot.left - 10, y + 6}, tick.label, {label_size, ink, "end", false});
  }
  canvas.line({plot.left, plot.bottom()}, {plot.right(), plot.bottom()}, {ink, 1.5, ""});
  for (const Tick& tick : panel.x.ticks) {
    const double x = plot.x(tick.at);
    canvas.line({x, plot.bottom()}, {x, plot.bottom() + 6}, {ink, 1.5, ""});
    canvas.text({x, plot.bottom() + 26}, tick.label, {label_size, ink, "middle", false});
  }
  canvas.text({plot.left + plot.width / 2, plot.bottom() + 50}, panel.x.label,
              {label_size, quiet_ink, "middle", false});
  canvas.text({text_margin, plot.top - 50}, panel.title, {20, ink, "start", true});
  canvas.text({text_margin, plot.top - 20}, panel.y.label, {label_size, quiet_ink, "start", false});
}

void draw_note(Canvas& canvas, const Note& note, const Plot& plot) {
  const Point at{plot.x(note.at.x), plot.y(note.at.y)};
  if (note.ringed) canvas.circle(at, 8, {"none", note.colour, 2.5});
  const bool below = note.side == Note::Side::below;
  canvas.text({at.x + (note.leftward ? -6 : 6), at.y + (below ? 32 : -18)}, note.text,
              {label_size, note.colour, note.leftward ? "end" : "start", true});
}

void draw_panel(Canvas& canvas, const Panel& panel, const Plot& plot) {
  draw_axes(canvas, panel, plot);
  for (const Band& band : panel.bands) canvas.band(band, plot);
  for (const Level& level : panel.levels) {
    if (level.y < panel.y.from || level.y > panel.y.to) continue;
    canvas.line({plot.left, plot.y(level.y)}, {plot.right(), plot.y(level.y)}, level.stroke);
  }
  for (const Line& line : panel.lines) canvas.series(line, plot);
  for (const Note& note : panel.notes) draw_note(canvas, note, plot);
  draw_end_labels(canvas, panel, plot);
}

}  // namespace

std::string svg(const Figure& figure) {
  const double room = picture_width - 2 * text_margin;
  std::vector<std::string> subtitle;
  for (const std::string& paragraph : figure.subtitle) {
    for (const std::string& line : lines_within(paragraph, subtitle_size, room)) subtitle.push_back(line);
  }
  const double header = 56 + 25 * static_cast<double>(subtitle.size());
  const double panel_height = above_plot + plot_height + below_plot;
  const double foot = header + panel_height * static_cast<double>(figure.panels.size()) + 6;
  const double height = foot + footnotes_height(figure.footnotes, picture_width);
  Canvas canvas;
  canvas.text({text_margin, 40}, fitted(figure.title, title_size, room), {title_size, ink, "start", true});
  for (std::size_t i = 0; i < subtitle.size(); ++i) {
    canvas.text({text_margin, 68 + 25 * static_cast<double>(i)}, fitted(subtitle[i], subtitle_size, room),
                {subtitle_size, quiet_ink, "start", false});
  }
  for (std::size_t p = 0; p < figure.panels.size(); ++p) {
    const Panel& panel = figure.panels[p];
    const double top = header + panel_height * static_cast<double>(p) + above_plot;
    draw_panel(canvas, panel,
               {panel.x, panel.y, left_margin, top, picture_width - left_margin - right_margin(figure), plot_height});
  }
  draw_footnotes(canvas, figure.footnotes, foot, picture_width);
  return svg_element({figure.id, figure.title, figure.description, picture_width, height}, canvas.content());
}

}  // namespace stillground::present
