#pragma once

#include "engine/loop/closure.hpp"
#include "engine/record/frames.hpp"

namespace stillground::simulation {

/// Enters what the building takes and gives off in the hour, and which part of its electricity each duty took. The
/// hour's EFT and power are there already. One duty alone took all of it; several share it as their heat over their
/// COP at the hour's mean EFT does, so that the parts sum to the whole.
void enter_duties(record::Hour& hour, const loop::Demand& demand, const loop::HeatPumps& pumps);

}  // namespace stillground::simulation
