#pragma once

#include <string>

#include "engine/config/context.hpp"
#include "engine/config/section.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::config {

inline constexpr std::size_t most_bores = 10000;

/// Warns of bores less than 3 m apart, the engine's own limit of a sound model: common practice, no source. `what`
/// begins the sentence.
void warn_of_close_bores(const Place& place, const std::string& what, double distance, Context& context);

/// A layout that a few numbers draw: grid, staggered, line, l_shape, u_shape, ring or fan. Throws InputError for too
/// many bores and for bores that overlap.
model::Layout read_shape(const std::string& shape, const Section& section, const model::Bore& bore, Context& context);

/// A plot of land with its outlines from files. Throws InputError for an outline that crosses itself or encloses
/// nothing.
model::Plot read_plot(const Section& section, const model::Bore& bore, Context& context);

/// The same land where surveyed positions say how it is filled. Throws InputError as well for keys about filling it.
model::Land read_land_of_positions(const Section& section, Context& context);

}  // namespace stillground::config
