#pragma once

#include <string>
#include <vector>

#include "tools/present/axis.hpp"

/// A picture as data: panels one below the other, everything in the units of its axes. `svg` draws it.
/// NaN in a series leaves a gap.
namespace stillground::present {

struct Stroke {
  std::string colour;
  double width = 2;
  std::string dash;  ///< SVG dash array ("8 5"), empty: solid
};

enum class Marker { none, filled, hollow };

struct Point {
  double x = 0;
  double y = 0;
};

/// A series, named at the right of the panel, or beside its last point where it ends well before. '\n' in the label
/// starts a second line.
struct Line {
  std::vector<Point> points;
  Stroke stroke;
  Marker marker = Marker::none;
  std::string label;
};

/// The room between a least and a greatest value at each x.
struct Band {
  std::vector<double> x;
  std::vector<double> low;
  std::vector<double> high;
  std::string fill;
  double opacity = 1;
  Stroke edge;
};

/// A horizontal line over the whole panel, such as a limit, named at the right. Beyond the axis' range it is not drawn
/// but named at that edge with an arrow.
struct Level {
  double y = 0;
  Stroke stroke;
  std::string label;
};

/// A word beside a point, which may be ringed.
struct Note {
  enum class Side { above, below };

  Point at;
  std::string text;
  std::string colour;
  bool ringed = false;
  Side side = Side::above;
  bool leftward = false;  ///< the word ends at the point instead of starting there
};

/// An upright thin line at an instant that is not of the series, named above the plot.
struct Mark {
  double x = 0;
  std::string label;
  std::string colour;
};

struct Panel {
  std::string title;
  Axis x;
  Axis y;
  std::vector<Band> bands;
  std::vector<Level> levels;
  std::vector<Line> lines;
  std::vector<Note> notes;
  std::vector<Mark> marks = {};
};

/// Says below the subtitle what a series is, in more words than its end has room for; broken into lines by the drawing.
struct Key {
  Stroke stroke;
  Marker marker = Marker::none;
  std::string text;
};

struct Figure {
  std::string id;  ///< letters and hyphens; keeps apart several pictures in one page
  std::string title;
  std::vector<std::string> subtitle;  ///< paragraphs, broken into lines by the drawing
  std::string description;            ///< what one would tell somebody who cannot see it
  std::vector<Panel> panels;
  std::vector<Key> keys = {};
  std::vector<std::string> footnotes = {};  ///< below everything, small; broken into lines by the drawing
};

}  // namespace stillground::present
