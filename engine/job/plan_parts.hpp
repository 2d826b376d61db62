#pragma once

#include "engine/assembly/assembly.hpp"
#include "engine/job/plan.hpp"

namespace stillground::job {

// Each fills in its part of a plan.

void describe_loads(const assembly::Assembly& assembly, Plan& plan);
void describe_bore_flow(const assembly::Assembly& assembly, Plan& plan);

/// The values of a scenario that catalogues gave.
std::vector<CatalogueValues> catalogue_values(const model::Scenario& scenario);

}  // namespace stillground::job
