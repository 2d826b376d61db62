#pragma once

#include <vector>

#include "tools/present/table.hpp"
#include "tools/results/compare.hpp"

namespace stillground::results {

/// One figure of a layout, as every form shows it.
struct Fact {
  present::Column column;
  std::vector<present::Cell> cells;  ///< one a layout
  present::Column upper = {};        ///< of the upper end, where the figure is a range; for machines
  std::vector<present::Cell> to = {};
};

/// All that is told of layouts side by side, in the order of telling.
std::vector<Fact> facts_of(const std::vector<Layout>& layouts);

}  // namespace stillground::results
