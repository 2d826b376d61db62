#pragma once

#include <vector>

#include "engine/config/csv.hpp"
#include "engine/model/field.hpp"

namespace stillground::config {

/// Columns x and y of a table, row by row: local coordinates or those of a national grid. InputError for a table
/// without them, for a point beyond any grid on the earth, and for one so far from the first that both cannot be
/// measured from one origin.
std::vector<model::PlanPoint> read_coordinates(const Csv& csv, const Where& asked);

}  // namespace stillground::config
