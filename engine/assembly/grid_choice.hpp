#pragma once

#include <vector>

#include "engine/base/errors.hpp"
#include "engine/ground/grid.hpp"
#include "engine/march/multirate.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::assembly {

/// Rings and layers: the scenario's own figures, otherwise those of its level. What the bores do arrives neither at the
/// outer edge nor at the bottom within the run: 4 and 3 times sqrt(4 alpha t) from them, at least 300 and 60 m.
ground::GridSpec choose_grid(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores);

/// The longest step that divides an hour, is not longer than asked for, and that the explicit axial conduction bears.
double stable_step(const model::Scenario& scenario, const ground::Grid& grid, std::vector<Warning>& warnings);

/// Two rates where the user leaves the choice to us: the reference knows one, and a neighbours' sum that is formed
/// within the day would see the slow rings stand still.
march::SlowModes choose_slow_modes(const model::Run& run, const ground::Grid& grid, double refresh);

}  // namespace stillground::assembly
