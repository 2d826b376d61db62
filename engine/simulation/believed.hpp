#pragma once

#include "engine/simulation/plausible.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::simulation {

/// Marches one hour and hands it out if its fluid can be. Throws NumericsError, with date, place and the likely causes,
/// where it cannot, and where the march gave up.
record::Hour believed_hour(Simulation& simulation, const Plausible& plausible);

}  // namespace stillground::simulation
