#pragma once

#include <vector>

#include "engine/model/loads.hpp"

namespace stillground::loop {

/// A heat pump's COP against the fluid entering it: linear between the points, held beyond them.
class CopCurve {
 public:
  /// `points` by rising EFT, at least one.
  explicit CopCurve(std::vector<model::CopPoint> points);

  double at(double eft) const;     ///< COP at EFT [K]
  double slope(double eft) const;  ///< dCOP/dEFT [1/K]; 0 beyond the points, the upper side's slope at a point

  double least_eft() const { return points_.front().eft; }  ///< [K]
  double most_eft() const { return points_.back().eft; }    ///< [K]

  const std::vector<model::CopPoint>& points() const { return points_; }

 private:
  std::vector<model::CopPoint> points_;
};

}  // namespace stillground::loop
