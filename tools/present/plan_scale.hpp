#pragma once

#include <cmath>

#include "tools/present/axis.hpp"
#include "tools/present/figure.hpp"

namespace stillground::present {

/// From metres of a site to the picture.
struct PlanScale {
  double x0 = 0, y1 = 0;  ///< left and upper edge [m]
  double per_metre = 1;   ///< [px/m]
  double left = 0, top = 0;

  Point at(const Point& p) const { return {left + (p.x - x0) * per_metre, top + (y1 - p.y) * per_metre}; }
};

/// The upright rectangle around points.
struct PlanExtent {
  Range x, y;

  void add(const Point& p) {
    x.add(p.x);
    y.add(p.y);
  }
};

inline double apart(const Point& a, const Point& b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}

}  // namespace stillground::present
