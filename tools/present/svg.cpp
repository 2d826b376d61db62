#include "tools/present/svg.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "tools/present/canvas.hpp"
#include "tools/present/end_labels.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"
#include "tools/present/panel.hpp"

namespace stillground::present {

namespace {

constexpr double picture_width = 900;
constexpr double room = picture_width - 2 * text_margin;
constexpr double title_size = 25;
constexpr double subtitle_size = 18;
constexpr double subtitle_line = 25;
constexpr double sample = 64;  ///< length of a key's stroke
constexpr double key_gap = 12;

/// Paragraphs from `top` on (the middle of the first line); returns where the next line would be.
double draw_paragraph(Canvas& canvas, const std::string& paragraph, double left, double top) {
  double y = top;
  for (const std::string& line : lines_within(paragraph, subtitle_size, picture_width - text_margin - left)) {
    canvas.text({left, y + 6}, fitted(line, subtitle_size, picture_width - text_margin - left),
                {subtitle_size, quiet_ink, "start", false});
    y += subtitle_line;
  }
  return y;
}

double draw_key(Canvas& canvas, const Key& key, double top) {
  const Axis to_scale{"", 0, picture_width, {}}, up{"", 0, 1, {}};
  const Plot plot{to_scale, up, 0, top - 1, picture_width, 1};
  const Stroke& stroke = key.stroke;
  canvas.line({text_margin, top}, {text_margin + sample, top}, stroke);
  if (key.marker != Marker::none) {
    canvas.series({{{text_margin + sample / 2, 0.5}}, {stroke.colour, 0, ""}, key.marker, ""}, plot);
  }
  return draw_paragraph(canvas, key.text, text_margin + sample + key_gap, top);
}

/// Title, subtitle and keys; returns where they end.
double draw_head(Canvas& canvas, const Figure& figure) {
  canvas.text({text_margin, 40}, fitted(figure.title, title_size, room), {title_size, ink, "start", true});
  double y = 62;
  for (const std::string& paragraph : figure.subtitle) y = draw_paragraph(canvas, paragraph, text_margin, y);
  for (const Key& key : figure.keys) y = draw_key(canvas, key, y);
  return y - 6;
}

}  // namespace

std::string svg(const Figure& figure) {
  Canvas canvas;
  double y = draw_head(canvas, figure);
  for (const Panel& panel : figure.panels) {
    draw_panel(canvas, panel, y, picture_width, right_margin(figure));
    y += panel_height(panel);
  }
  y += 6;
  draw_footnotes(canvas, figure.footnotes, y, picture_width);
  const double height = y + footnotes_height(figure.footnotes, picture_width);
  return svg_element({figure.id, figure.title, figure.description, picture_width, height}, canvas.content());
}

}  // namespace stillground::present
