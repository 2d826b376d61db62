#pragma once

#include <string>
#include <vector>

#include "tools/present/canvas.hpp"

namespace stillground::present {

/// What the marks of a plan look like, on the drawing as in its legend.
enum class PlanSign { bore, later, shut_off, later_shut_off, link, kept_clear, setback, chamber };

/// One line of the legend.
struct LegendEntry {
  PlanSign sign;
  std::string text;
};

/// A bore's mark of `radius` [px]. `sign`: one of the bores'.
void draw_bore(Canvas& canvas, PlanSign sign, Point at, double radius);

/// A line from bore to bore with an arrow halfway.
void draw_link(Canvas& canvas, Point from, Point to);

void draw_chamber(Canvas& canvas, Point at);

/// The entries one below the other from `at` on, 26 px a line.
void draw_legend(Canvas& canvas, const std::vector<LegendEntry>& entries, Point at, const std::string& hatch_id);

/// Height of so many entries [px].
double legend_height(std::size_t entries);

}  // namespace stillground::present
