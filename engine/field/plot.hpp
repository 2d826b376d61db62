#pragma once

#include <vector>

#include "engine/model/field.hpp"

namespace stillground::field {

/// Whether the point lies inside the outline (even-odd rule; a point on the line is on either side).
bool inside(const model::Outline& outline, const model::PlanPoint& point);

/// Distance from the point to the outline's line, from within or without [m].
double distance_to(const model::Outline& outline, const model::PlanPoint& point);

/// Whether a bore may stand there: within the outline by its setback, and clear of what is to be kept clear.
bool may_stand(const model::Land& land, const model::PlanPoint& point);

/// Area that an outline encloses [m2].
double area(const model::Outline& outline);

/// The places of the plot's bores: of one lattice, laid at `angle` and pushed along and across its rows in tenths of a
/// spacing, the position that holds the most bores (the first of equals). Row by row. Empty if none fits. Where the
/// coordinates begin makes no difference.
std::vector<model::PlanPoint> fill(const model::Plot& plot);

}  // namespace stillground::field
