#pragma once

#include <cstdint>
#include <string>

#include "engine/model/scenario.hpp"

namespace stillground::validation {

/// A field drawn at random, all of it invented: every loop type, layout, flow rule and kind of undisturbed ground; on
/// and off loads by the hour, in blocks and by the season, of the ground itself or through heat pumps; one to four
/// layers; bores of 50 to 200 m; flows from turbulent down to laminar (0.07 L/s in 200 m, slow coaxial pipes). Nothing
/// that screening refuses. The same seed gives the same field on every machine.
model::Scenario random_field(std::uint64_t seed, int years);

/// What was drawn, in a few words.
std::string field_in_words(const model::Scenario& scenario);

}  // namespace stillground::validation
