#include "tools/present/plan_labels.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "tools/present/labels.hpp"

namespace stillground::present {

namespace {

using Around = std::array<PlanBox, 8>;

constexpr double between_words = 4;  ///< two labels side by side would be read as one [px]

/// Candidates in the order of a reader's liking: above to the right first.
Around boxes_around(const Point& at, double radius, double wide, double high) {
  const double near = 0.8 * radius + 2, far = radius + 5;
  const auto box = [&](double left, double top) { return PlanBox{left, top, left + wide, top + high}; };
  const double right = at.x + near, left = at.x - near - wide, middle = at.x - wide / 2;
  const double above = at.y - near - high, below = at.y + near;
  return {box(right, above),
          box(at.x + far, at.y - high / 2),
          box(right, below),
          box(left, above),
          box(at.x - far - wide, at.y - high / 2),
          box(left, below),
          box(middle, at.y - far - high),
          box(middle, at.y + far)};
}

/// Those first that lie farthest the way out of the mark's row.
void sort_outward(Around& boxes, const PlanMark& mark) {
  const auto out = [&](const PlanBox& box) {
    const double x = (box.left + box.right) / 2 - mark.at.x, y = (box.top + box.bottom) / 2 - mark.at.y;
    return std::lround(100 * (x * mark.away->x + y * mark.away->y) / std::hypot(x, y));
  };
  std::stable_sort(boxes.begin(), boxes.end(), [&](const auto& a, const auto& b) { return out(a) > out(b); });
}

/// Finds a mark's label its place among what is taken already.
std::optional<LabelPlace> place(const PlanMark& mark, double radius, double size, double width,
                                std::vector<PlanBox>& taken) {
  for (const std::string& label : mark.labels) {
    Around boxes = boxes_around(mark.at, radius, text_width(label, size), size);
    if (mark.away) sort_outward(boxes, mark);
    for (const PlanBox& box : boxes) {
      if (box.left < 0 || box.right > width) continue;
      if (std::any_of(taken.begin(), taken.end(), [&](const PlanBox& other) { return box.meets(other); })) continue;
      taken.push_back({box.left - between_words, box.top, box.right + between_words, box.bottom});
      return LabelPlace{{box.left, box.bottom - 0.15 * size},
                        label};  // a fifth of the letters hangs below the baseline
    }
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::optional<LabelPlace>> place_labels(const std::vector<PlanMark>& marks, double radius, double size,
                                                    double width, std::vector<PlanBox> taken) {
  for (const PlanMark& mark : marks) {
    taken.push_back({mark.at.x - radius, mark.at.y - radius, mark.at.x + radius, mark.at.y + radius});
  }
  std::vector<std::optional<LabelPlace>> places(marks.size());
  for (const bool ends_row : {true, false}) {
    for (std::size_t i = 0; i < marks.size(); ++i) {
      if (marks[i].away.has_value() == ends_row) places[i] = place(marks[i], radius, size, width, taken);
    }
  }
  return places;
}

}  // namespace stillground::present
