#pragma once

#include <string>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// A panel's plotting area on the picture [px, y downward] and what its axes make of a value.
struct Plot {
  const Axis& x_axis;
  const Axis& y_axis;
  double left = 0;
  double top = 0;
  double width = 0;
  double height = 0;

  double right() const { return left + width; }
  double bottom() const { return top + height; }
  double x(double value) const { return left + width * (value - x_axis.from) / (x_axis.to - x_axis.from); }
  double y(double value) const { return bottom() - height * (value - y_axis.from) / (y_axis.to - y_axis.from); }
};

struct TextStyle {
  double size = 17;
  std::string colour;
  std::string anchor;  ///< "start", "middle" or "end"
  bool bold = false;
};

struct CircleStyle {
  std::string fill;
  std::string edge;
  double edge_width = 1;
};

/// Collects SVG elements.
class Canvas {
 public:
  void line(Point from, Point to, const Stroke& stroke);
  void circle(Point centre, double radius, const CircleStyle& style);

  /// A rectangle between two opposite corners; `fill` is a colour or "url(#pattern)".
  void box(Point upper_left, Point lower_right, const std::string& fill, const Stroke& edge);

  /// A closed line round its corners.
  void polygon(const std::vector<Point>& corners, const std::string& fill, const Stroke& edge);

  /// One line of text, its baseline at `at`, with a white rim that keeps it readable over lines.
  void text(Point at, const std::string& utf8, const TextStyle& style);

  /// A series with its markers; NaN leaves a gap.
  void series(const Line& line, const Plot& plot);

  /// A filled range with its two edges; NaN leaves a gap.
  void band(const Band& band, const Plot& plot);

  const std::string& content() const { return content_; }

 private:
  std::string content_;
};

/// Height of these footnotes on a picture `width` px wide, with the room above and below them [px]; 0 without any.
double footnotes_height(const std::vector<std::string>& footnotes, double width);

/// Draws them, broken into lines, below a thin rule at `top` [px].
void draw_footnotes(Canvas& canvas, const std::vector<std::string>& footnotes, double top, double width);

/// A text that may stand in XML: markup escaped, control characters and broken UTF-8 replaced.
std::string xml_text(const std::string& utf8);

/// What stands at the head of a picture.
struct PictureHead {
  std::string id;     ///< keeps apart several pictures in one page
  std::string title;  ///< for readers of screens, as is the description
  std::string description;
  double width = 0;
  double height = 0;
};

/// A self-contained SVG element on white ground.
std::string svg_element(const PictureHead& head, const std::string& content);

}  // namespace stillground::present
