#pragma once

#include "engine/run/assembly.hpp"
#include "engine/run/run.hpp"

namespace stillground::run {

// Each fills in its part of a plan.

void describe_loads(const Assembly& assembly, Plan& plan);
void describe_bore_flow(const Assembly& assembly, Plan& plan);
void describe_sources(const model::Scenario& scenario, Plan& plan);

}  // namespace stillground::run
