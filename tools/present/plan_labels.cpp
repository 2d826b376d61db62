#include "tools/present/plan_labels.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "tools/present/labels.hpp"

namespace stillground::present {

namespace {

struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;

  bool meets(const Box& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

/// Candidates in the order of a reader's liking: above to the right first.
std::array<Box, 8> boxes_around(const Point& at, double radius, double wide, double high) {
  const double near = 0.8 * radius + 2, far = radius + 5;
  const auto box = [&](double left, double top) { return Box{left, top, left + wide, top + high}; };
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

}  // namespace

std::vector<std::optional<LabelPlace>> place_labels(const std::vector<PlanMark>& marks, double radius, double size,
                                                    double width) {
  std::vector<Box> taken;
  for (const PlanMark& mark : marks) {
    taken.push_back({mark.at.x - radius, mark.at.y - radius, mark.at.x + radius, mark.at.y + radius});
  }
  std::vector<std::optional<LabelPlace>> places(marks.size());
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (marks[i].label.empty()) continue;
    for (const Box& box : boxes_around(marks[i].at, radius, text_width(marks[i].label, size), size)) {
      if (box.left < 0 || box.right > width) continue;
      if (std::any_of(taken.begin(), taken.end(), [&](const Box& other) { return box.meets(other); })) continue;
      taken.push_back(box);
      places[i] = LabelPlace{{box.left, box.bottom - 0.15 * size}};  // a fifth of the letters hangs below the baseline
      break;
    }
  }
  return places;
}

}  // namespace stillground::present
