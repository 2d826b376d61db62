#pragma once

#include "engine/assembly/assembly.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/json.hpp"
#include "tools/present/site_plan.hpp"
#include "tools/present/table.hpp"

namespace stillground::scenarios {

/// What a layout comes to, seen from above.
struct PlanSums {
  std::size_t bores = 0;
  double active_length = 0;  ///< [m]
  double drill_length = 0;   ///< [m]
  double nearest = 0;        ///< spacing of the two nearest bores [m]; 0 for a lone one
  double land = 0;           ///< within a plot's outline [m2]; 0 without one
};
PlanSums plan_sums(const assembly::Assembly& assembly);

/// One row a bore; as CSV it may serve as a scenario's `positions`.
present::Table plan_table(const assembly::Assembly& assembly);

/// What stands above that table.
std::vector<std::string> plan_comments(const assembly::Assembly& assembly);

std::string plan_text(const assembly::Assembly& assembly, UnitSystem system = UnitSystem::si);
present::Json plan_json(const assembly::Assembly& assembly);

/// The plan from above: bores numbered as in the table, phases and bores that are shut off told apart, names and
/// unusual depths beside the bores, bores in series joined, the land's outline, what is kept clear and the setbacks.
present::SitePlan site_plan(const assembly::Assembly& assembly, const outputs::Drawing& drawing = {});

/// What a run of it would warn of beforehand, and the cautions.
program::Notices plan_notices(const assembly::Assembly& assembly);

}  // namespace stillground::scenarios
