#pragma once

#include <optional>
#include <vector>

#include "engine/config/context.hpp"
#include "engine/config/csv.hpp"
#include "engine/config/section.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::config {

// Each reads one part of the scenario from its root section and judges what needs no physics. All throw InputError.

model::Ground read_ground(const Section& root, Context& context);
model::Bore read_bore(const Section& root, Context& context);
/// Needs the bore and the run: positions take what they lack from them.
model::Layout read_layout(const Section& root, const model::Bore& bore, const model::Run& run, Context& context);
model::Fluid read_fluid(const Section& root);
model::Flow read_flow(const Section& root);
/// Needs the run: loads that grow or begin later are written out for each of its hours.
model::Loads read_loads(const Section& root, const model::Run& run, Context& context);
/// None where the loads are the ground's own.
std::optional<model::HeatPump> read_heat_pump(const Section& root, const model::Loads& loads, Context& context);
model::Run read_run(const Section& root);
std::vector<model::Limit> read_limits(const Section& root);
model::RecordFields read_fields(const Section& root);

/// Reads a CSV that `section` names at `leaf`, relative to the scenario's folder, and notes it as an input.
Csv read_input(const Section& section, std::string_view leaf, Context& context);

}  // namespace stillground::config
