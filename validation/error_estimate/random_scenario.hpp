#pragma once

#include <cstdint>
#include <string>

#include "engine/model/scenario.hpp"

namespace stillground::validation {

/// A scenario drawn at random, all of it invented: one to four layers of ground, one to six bores of 50 to 200 m in a
/// row, a rectangle or at odd places and depths, grout, pipes, fluid, flow with the load or always, loads (at random
/// hour by hour, by season and time of day, in blocks of hours) of the ground itself or through heat pumps, steps of
/// 15 to 60 min, refreshes every 6 h to 7 d. The same seed gives the same scenario on every machine.
model::Scenario random_scenario(std::uint64_t seed, int years);

/// What was drawn, in a few words.
std::string in_words(const model::Scenario& scenario);

}  // namespace stillground::validation
