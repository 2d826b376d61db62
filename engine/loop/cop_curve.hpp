#pragma once

#include <vector>

#include "engine/model/loads.hpp"

namespace stillground::loop {

/// A heat pump's COP against the fluid entering it: linear between the points, held beyond them.
class CopCurve {
 public:
  /// `points` by rising EFT, at least one.
  explicit CopCurve(std::vector<model::CopPoint> points);

  struct Point {
    double cop = 0;
    double slope = 0;  ///< dCOP/dEFT [1/K]; 0 beyond the curve's points, the upper side's at a point
  };

  Point look(double eft) const;  ///< at EFT [K]
  double at(double eft) const { return look(eft).cop; }
  double slope(double eft) const { return look(eft).slope; }

  double least_eft() const { return points_.front().eft; }  ///< [K]
  double most_eft() const { return points_.back().eft; }    ///< [K]

  const std::vector<model::CopPoint>& points() const { return points_; }

 private:
  std::vector<model::CopPoint> points_;
};

}  // namespace stillground::loop
