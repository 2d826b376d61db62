#pragma once

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"

namespace stillground::forecast {

/// The largest error of an hourly EFT with flow that time step, grid and refresh interval may cause, estimated before
/// the run from marches of one bore (error_responses) superposed over the hours' heat:
/// - heat: the loads' own; through a heat pump at the COP of an EFT that is superposed likewise.
/// - step, grid: the largest superposed error. Where the pump stops and starts the answer is not linear in the load
///   (what stood in the legs is carried out first): four days about the hardest restarts, one in each quarter of a
///   year, are marched by one bore under its share of the loads, and what the responses do not explain is added.
/// - refresh: the neighbours' superposed sum against its continuation from refresh to refresh.
/// Their absolute values add up hour by hour; where the flow is near laminar they grow by the film's feedback
/// (HeatHistory). Everything is raised by a quarter (`margin`) for what is left out: film and COP away from where they
/// were taken (a tenth of the heat), bores of unequal depth and heat, the orders in between. The same bits at any
/// number of threads. Not a number where loads and heat pumps meet at no temperature.
record::ErrorEstimate estimate_errors(const assembly::Assembly& assembly);

}  // namespace stillground::forecast
