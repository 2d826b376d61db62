#include "tools/sweep/walk.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <unordered_map>

#include "engine/base/where.hpp"

namespace stillground::sweep {

namespace {

std::size_t length_of_pairs(const Plan& plan) {
  const Axis& first = plan.axes.front();
  for (const Axis& axis : plan.axes) {
    if (axis.values.size() == first.values.size()) continue;
    Where{axis.place, "vary." + axis.path}.refuse(
        fmt::format("has {} values where {} has {}, and paired: true walks them together", axis.values.size(),
                    first.path, first.values.size()));
  }
  return first.values.size();
}

std::size_t product(const Plan& plan) {
  double points = 1;
  for (const Axis& axis : plan.axes) points *= static_cast<double>(axis.values.size());
  if (points > static_cast<double>(most_points)) {
    throw InputError({plan.file.string()}, "vary",
                     fmt::format("makes {:.0f} points (allowed: up to {}); vary fewer keys, or fewer values of each",
                                 points, most_points));
  }
  return static_cast<std::size_t>(points);
}

}  // namespace

bool keeps_geometry(const std::string& path) {
  // What screen::Batch allows a variant to have of its own; all else is taken for another geometry.
  constexpr std::array<std::string_view, 12> sections = {"loads.",     "heat_pump.",       "fluid.",  "bore.grout.",
                                                         "bore.pipe.", "bore.resistance.", "limits.", "record.",
                                                         "loads",      "heat_pump",        "fluid",   "limits"};
  constexpr std::array<std::string_view, 9> keys = {"flow.per_bore", "flow.total", "flow.runs",
                                                    "flow.varies",   "flow.least", "bore.leg_spacing",
                                                    "bore.grout",    "bore.pipe",  "bore.resistance"};
  const auto inside = [&](std::string_view section) {
    return section.ends_with('.') ? path.starts_with(section) : path == section;
  };
  return std::any_of(sections.begin(), sections.end(), inside) ||
         std::find(keys.begin(), keys.end(), path) != keys.end();
}

Walk::Walk(const Plan& plan) : plan_(plan), count_(plan.paired ? length_of_pairs(plan) : product(plan)) {
  find_middles();
}

std::vector<std::size_t> Walk::choice(std::size_t number) const {
  const std::size_t axes = plan_.axes.size();
  if (plan_.paired) return std::vector<std::size_t>(axes, number - 1);
  std::vector<std::size_t> choice(axes);
  std::size_t rest = number - 1;
  for (std::size_t axis = axes; axis-- > 0;) {
    choice[axis] = rest % plan_.axes[axis].values.size();
    rest /= plan_.axes[axis].values.size();
  }
  return choice;
}

std::vector<config::Override> Walk::overrides(const std::vector<std::size_t>& choice) const {
  std::vector<config::Override> overrides;
  for (std::size_t axis = 0; axis < choice.size(); ++axis) {
    const Axis& varied = plan_.axes[axis];
    overrides.push_back({varied.path, varied.place, varied.values[choice[axis]].node});
  }
  return overrides;
}

void Walk::find_middles() {
  std::unordered_map<std::string, std::size_t> first;
  middles_.resize(count_);
  served_.assign(count_, 0);
  for (std::size_t number = 1; number <= count_; ++number) {
    const std::vector<std::size_t> chosen = choice(number);
    std::string geometry;
    for (std::size_t axis = 0; axis < chosen.size(); ++axis) {
      if (keeps_geometry(plan_.axes[axis].path)) continue;
      geometry += config::on_one_line(plan_.axes[axis].values[chosen[axis]].node) + '\n';
    }
    middles_[number - 1] = first.try_emplace(geometry, number).first->second;
    ++served_[middles_[number - 1] - 1];
  }
}

}  // namespace stillground::sweep
