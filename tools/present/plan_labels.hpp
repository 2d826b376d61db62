#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// An upright rectangle of the picture [px].
struct PlanBox {
  double left = 0, top = 0, right = 0, bottom = 0;

  bool meets(const PlanBox& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

/// A mark of a plan on the picture and what may be written beside it.
struct PlanMark {
  Point at;                         ///< [px]
  std::vector<std::string> labels;  ///< the one liked best first; empty: none
  std::optional<Point> away = {};   ///< ends a row: the way out of it, where its label goes, before all others' [px]
};

/// A label in its place: which of the mark's, and its baseline's start.
struct LabelPlace {
  Point at;  ///< [px]
  std::string text;
};

/// For each mark the first of its labels that meets, at `size` [px] in one of eight places around it, no other mark
/// (circles of `radius` [px]), no other label, nothing of `taken` and no edge of the picture (0 to `width`); none where
/// there is no such place.
std::vector<std::optional<LabelPlace>> place_labels(const std::vector<PlanMark>& marks, double radius, double size,
                                                    double width, std::vector<PlanBox> taken = {});

}  // namespace stillground::present
