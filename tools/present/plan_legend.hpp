#pragma once

#include <string>
#include <vector>

#include "tools/present/canvas.hpp"

namespace stillground::present {

/// What a bore's mark tells: filled if it works from the start, else hollow in a shape of its phase; crossed out if it
/// is shut off at some time.
struct BoreSign {
  int phase = 0;  ///< 0: from the start; those after `last_phase` share its shape
  bool shut_off = false;
};

/// The last phase with a shape of its own: circle, square, diamond, triangle.
inline constexpr int last_phase = 4;

/// What the marks of a plan look like, on the drawing as in its legend.
enum class PlanSign { bore, shut_off, link, kept_clear, setback, chamber };

/// One line of the legend.
struct LegendEntry {
  PlanSign sign;
  std::string text;
  int phase = 0;  ///< of a bore
};

/// A bore's mark of `radius` [px].
void draw_bore(Canvas& canvas, const BoreSign& sign, Point at, double radius);

/// A line from bore to bore with an arrow halfway.
void draw_link(Canvas& canvas, Point from, Point to);

void draw_chamber(Canvas& canvas, Point at);

/// The entries one below the other from `at` on, 26 px a line.
void draw_legend(Canvas& canvas, const std::vector<LegendEntry>& entries, Point at, const std::string& hatch_id);

/// Height of so many entries [px].
double legend_height(std::size_t entries);

}  // namespace stillground::present
