#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/rates.hpp"

namespace stillground::march {

/// What is made of a bore's shape (the layers that it fills) and a flow regime, shared by the groups that have both in
/// common. Made anew, in the memory of what is no longer needed, when a forcing brings another regime; what stagnant
/// fluid needs never changes and is kept.
template <class Thing>
class BoreCache {
 public:
  explicit BoreCache(const Problem& problem) : problem_(problem), of_group_(problem.groups.size(), nullptr) {
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
      const auto same = [&](const Shape& shape) {
        return problem.groups[shape.model].fraction == problem.groups[g].fraction;
      };
      const auto found = std::find_if(shapes_.begin(), shapes_.end(), same);
      shape_.push_back(static_cast<std::size_t>(found - shapes_.begin()));
      if (found == shapes_.end()) shapes_.push_back({g, {}});
    }
  }

  /// Calls make(thing, group, regime) for what the forcing needs and is not there.
  template <class Make>
  void prepare(const Forcing& forcing, Make&& make) {
    prepare(forcing, 0, of_group_.size(), std::forward<Make>(make));
  }

  /// The same for the groups [from, to) alone.
  template <class Make>
  void prepare(const Forcing& forcing, std::size_t from, std::size_t to, Make&& make) {
    for (Shape& shape : shapes_) {
      for (const auto& made : shape.made) made->needed = made->version == stagnant;
    }
    for (std::size_t g = from; g < to; ++g) {
      const FlowRegime* regime = forcing.of(g);
      Made* found = regime ? find(shapes_[shape_[g]], regime->version) : nullptr;
      if (found) found->needed = true;
    }
    for (std::size_t g = from; g < to; ++g) {
      of_group_[g] = nullptr;
      const FlowRegime* regime = forcing.of(g);
      if (!regime) continue;
      Shape& shape = shapes_[shape_[g]];
      Made* made = find(shape, regime->version);
      if (!made) {
        made = &spare(shape);
        made->version = regime->version;
        made->needed = true;
        make(made->thing, problem_.groups[shape.model], *regime);
      }
      of_group_[g] = &made->thing;
    }
  }

  /// The group's; null: not drilled yet.
  const Thing* of(std::size_t group) const { return of_group_[group]; }

 private:
  static constexpr long stagnant = 0;  // version

  struct Made {
    long version = -1;
    bool needed = false;
    Thing thing;
  };

  struct Shape {
    std::size_t model = 0;  // a group that has it
    std::vector<std::unique_ptr<Made>> made;
  };

  Made* find(Shape& shape, long version) {
    const auto same = [&](const auto& made) { return made->version == version; };
    const auto found = std::find_if(shape.made.begin(), shape.made.end(), same);
    return found == shape.made.end() ? nullptr : found->get();
  }

  Made& spare(Shape& shape) {
    const auto free = [](const auto& made) { return !made->needed; };
    const auto found = std::find_if(shape.made.begin(), shape.made.end(), free);
    return found == shape.made.end() ? *shape.made.emplace_back(std::make_unique<Made>()) : **found;
  }

  const Problem& problem_;
  std::vector<std::size_t> shape_;  // [group]
  std::vector<Shape> shapes_;
  std::vector<const Thing*> of_group_;
};

}  // namespace stillground::march
