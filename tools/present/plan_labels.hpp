#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// A mark of a plan on the picture and the word that belongs beside it.
struct PlanMark {
  Point at;           ///< [px]
  std::string label;  ///< empty: none
};

/// Where a label goes: its baseline's start.
struct LabelPlace {
  Point at;  ///< [px]
};

/// For each mark the first of eight places around it where its label, at `size` [px], meets no other mark (circles of
/// `radius` [px]), no other label and no edge of the picture (0 to `width`); none where there is no such place or no
/// label.
std::vector<std::optional<LabelPlace>> place_labels(const std::vector<PlanMark>& marks, double radius, double size,
                                                    double width);

}  // namespace stillground::present
