#include "tools/present/panel.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "tools/present/end_labels.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

constexpr double left_margin = 78;
constexpr double plot_height = 300;
constexpr double above_plot = 90;   ///< the panel's title and the name of its y axis
constexpr double below_plot = 62;   ///< tick labels and the name of its x axis
constexpr double second_line = 22;  ///< of the tick labels
constexpr double bold = 1.1;        ///< how much wider bold letters are

double below_ticks(const Panel& panel) {
  return std::any_of(panel.x.ticks.begin(), panel.x.ticks.end(), [](const Tick& tick) { return !tick.below.empty(); })
             ? second_line
             : 0;
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
    canvas.text({x, plot.bottom() + 48}, tick.below, {label_size, quiet_ink, "middle", false});
  }
  canvas.text({plot.left + plot.width / 2, plot.bottom() + 50 + below_ticks(panel)}, panel.x.label,
              {label_size, quiet_ink, "middle", false});
  canvas.text({text_margin, plot.top - 56}, panel.title, {20, ink, "start", true});
  canvas.text({text_margin, plot.top - 26}, panel.y.label, {label_size, quiet_ink, "start", false});
}

/// Words already placed in a plot: what they cover from left to right and the height of their baselines.
struct Placed {
  double left = 0, right = 0, y = 0;

  bool meets(const Placed& other) const {
    return left < other.right && other.left < right && std::abs(y - other.y) < second_line;
  }
};

bool is_free(const std::vector<Placed>& taken, const Placed& place) {
  return std::none_of(taken.begin(), taken.end(), [&](const Placed& other) { return place.meets(other); });
}

/// Where a word of `width` stands that belongs to x: from it on, or up to it where the plot ends.
Placed beside(double x, double width, bool leftward, const Plot& plot) {
  const double left = leftward ? x - 6 - width : x + 6;
  const double inside = std::clamp(left, plot.left, std::max(plot.left, plot.right() - width));
  return {inside, inside + width, 0};
}

void draw_note(Canvas& canvas, const Note& note, const Plot& plot, std::vector<Placed>& taken) {
  const Point at{plot.x(note.at.x), plot.y(note.at.y)};
  if (note.ringed) canvas.circle(at, 8, {"none", note.colour, 2.5});
  Placed place = beside(at.x, bold * text_width(note.text, label_size), note.leftward, plot);
  const double above = at.y - 18, below = at.y + 32;
  const bool is_above = note.side == Note::Side::above;
  place.y = is_above ? above : below;
  if (!is_free(taken, place)) place.y = is_above ? below : above;
  while (!is_free(taken, place)) place.y += is_above ? second_line : -second_line;
  taken.push_back(place);
  // The width is an estimate: the end that belongs to the point is the one to keep.
  canvas.text({note.leftward ? place.right : place.left, place.y}, note.text,
              {label_size, note.colour, note.leftward ? "end" : "start", true});
}

/// All upright lines, their names in as many rows as they need, the first one above the plot.
void draw_marks(Canvas& canvas, const Panel& panel, const Plot& plot, std::vector<Placed>& taken) {
  for (const Mark& mark : panel.marks) {
    const double x = plot.x(mark.x);
    canvas.line({x, plot.top - 4}, {x, plot.bottom()}, {mark.colour, 1.5, "2 4"});
    const double width = text_width(mark.label, label_size);
    const bool leftward = x + 6 + width > plot.right();
    Placed place = beside(x, width, leftward, plot);
    place.y = plot.top - 6;
    while (!is_free(taken, place)) place.y += second_line;
    taken.push_back(place);
    canvas.text({leftward ? place.right : place.left, place.y}, mark.label,
                {label_size, mark.colour, leftward ? "end" : "start", false});
  }
}

}  // namespace

double panel_height(const Panel& panel) {
  return above_plot + plot_height + below_plot + below_ticks(panel);
}

void draw_panel(Canvas& canvas, const Panel& panel, double top, double width, double right) {
  const Plot plot{panel.x, panel.y, left_margin, top + above_plot, width - left_margin - right, plot_height};
  draw_axes(canvas, panel, plot);
  for (const Band& band : panel.bands) canvas.band(band, plot);
  std::vector<Placed> taken;
  draw_marks(canvas, panel, plot, taken);
  for (const Level& level : panel.levels) {
    if (level.y < panel.y.from || level.y > panel.y.to) continue;
    canvas.line({plot.left, plot.y(level.y)}, {plot.right(), plot.y(level.y)}, level.stroke);
  }
  for (const Line& line : panel.lines) canvas.series(line, plot);
  for (const Note& note : panel.notes) draw_note(canvas, note, plot, taken);
  draw_end_labels(canvas, panel, plot);
}

}  // namespace stillground::present
