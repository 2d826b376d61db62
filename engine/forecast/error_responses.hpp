#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/response/step_response.hpp"

namespace stillground::forecast {

/// The whole error over the difference to the finer march: see error_responses.
inline constexpr double rest_of_step = 4.0 / 3, rest_of_rings = 4.0 / 3, rest_of_layers = 2;

/// What the EFT and its numerical errors answer to a watt of heat in every bore, from marches of one bore. The march is
/// linear in the heat but for the film and the pumps, so an error superposes like a temperature: that of any loads is
/// the response's superposition over them.
struct ErrorResponses {
  response::StepResponse rise;  ///< of the EFT [K/W]: the bore's own and its neighbours'
  response::StepResponse
      neighbours;                 ///< the neighbours' part of it, mean over the bores, to be used at refreshes [K/W]
  response::StepResponse step;    ///< what the EFT errs by the time step [K/W]
  response::StepResponse rings;   ///< ... by the rings' width, the bore's own and its neighbours' [K/W]
  response::StepResponse layers;  ///< ... by the layers' height, likewise [K/W]
};

/// Each error is the difference of two marches, the run's and a finer one, times what theory says of the rest:
/// - step: against a quarter of it. The order is two for smooth loads, lower where a jump is felt within the step: for
///   order one the whole error is 4/3 of that difference.
/// - rings: against half their width (ratio). The order is two at least: 4/3.
/// - layers: against half their height. The heat per length is unbounded towards a bore's ends and the fluid's front is
///   carried by finite cells, so the order is no better than one: twice. Finer layers than the run's bear no long
///   steps, so the first year is marched; its growth from there on is that of layers two and four times as high.
/// The first 48 hours are a run's own hourly means in the scenario's ground, later times growing steps in ground of one
/// solid; neighbours answer in the mean over the bores, within the 48 hours only where some stand closer than 3 m.
ErrorResponses error_responses(const assembly::Assembly& assembly);

/// The field's pairs of bores by distance, as each bore sees them in the mean: `count` neighbours at `distance`.
struct Neighbourhood {
  std::vector<double> distance;  ///< [m], rising; empty for a lone bore
  std::vector<double> count;
};

/// Pairs are shared out between field::DistanceNodes.
Neighbourhood neighbourhood(const std::vector<model::BoreSite>& bores);

}  // namespace stillground::forecast
