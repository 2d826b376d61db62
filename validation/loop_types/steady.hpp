#pragma once

#include <memory>

#include "validation/harness/steady_bore.hpp"
#include "validation/loop_types/table.hpp"

namespace stillground::validation {

/// A row's bore marched to its steady state; `largest_cell` [m] along it, 0: the engine's choice.
inline std::unique_ptr<SteadyBore> marched(const TableRow& row, double largest_cell = 0) {
  SteadyBore::Make make;
  make.depth = number(row, "length");
  make.grid.largest_cell = largest_cell;
  make.networks = {network(row)};
  make.heat_rate = number(row, "heat_rate");
  make.wall = row.at("limit") == "wall" ? WallHeld::at_one_temperature : WallHeld::at_one_heat;
  return std::make_unique<SteadyBore>(make);
}

}  // namespace stillground::validation
