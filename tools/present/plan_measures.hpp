#pragma once

#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "tools/present/canvas.hpp"
#include "tools/present/plan_labels.hpp"
#include "tools/present/plan_scale.hpp"

namespace stillground::present {

/// A distance on a plan as draughtsmen write it: a line beside what it measures, with a tick at each end, and a thin
/// line from each end to what is measured. All on the picture [px].
struct PlanMeasure {
  Point from, to;        ///< what is measured
  Point from_at, to_at;  ///< the line's ends
  std::string text;
  Point text_at;  ///< middle of the text
};

/// Distances of a field of bores: that of the nearest two, of the first such pair beside which there is room, and how
/// far the field reaches along x (below everything) and along y (at the left of everything) where it is more than a
/// pair. `points`: bores [m], `radius`: of their marks [px], `extent`: of everything drawn [m].
std::vector<PlanMeasure> measures_of(const std::vector<Point>& points, const PlanScale& scale, double radius,
                                     const PlanExtent& extent, UnitSystem system);

void draw_measure(Canvas& canvas, const PlanMeasure& measure);

/// The room that a measure takes.
std::vector<PlanBox> boxes_of(const PlanMeasure& measure);

/// Two bars of round lengths from `at` to the right, in metres and, below, in feet.
void draw_scale_bars(Canvas& canvas, const PlanScale& scale, Point at);

/// Smallest distance of two of them [m]; 0 for a lone one.
double nearest_distance(const std::vector<Point>& points);

}  // namespace stillground::present
