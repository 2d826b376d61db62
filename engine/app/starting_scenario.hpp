#pragma once

#include <string>

namespace stillground::app {

/// What a starting scenario is like.
enum class Like {
  grid,     ///< U's in rows and columns
  plot,     ///< U's that fill a plot of land
  coaxial,  ///< a pipe within a pipe
  us        ///< the grid, its quantities in the units of the United States
};

/// A scenario to begin with, as text: it can be run as it stands, and shows every key there is. A key that it does not
/// need stands behind a "#", with an example or the value that holds without it. Made from the table of keys.
/// `outline`: the file of a plot's corners, as the scenario names it.
std::string starting_scenario(Like like, const std::string& outline = "");

/// The corners of such a plot: an L of land, in the form that field.plot.outline reads.
std::string starting_outline();

}  // namespace stillground::app
