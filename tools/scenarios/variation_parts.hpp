#pragma once

#include <optional>
#include <string>

#include "tools/scenarios/variation.hpp"

namespace stillground::scenarios {

/// A drawn layout's key in the scenario and its spacing.
struct SpacedShape {
  std::string key;
  double spacing = 0;  ///< [m]
};

/// None of surveyed bores and of a plot of land.
std::optional<SpacedShape> spaced_shape(const model::Layout& layout);

}  // namespace stillground::scenarios
