#pragma once

#include "engine/forecast/error_responses.hpp"

namespace stillground::forecast {

/// What the step responses do not explain of the errors on days on which the pump stops and starts: largest absolute
/// value over the hours with flow [K].
struct RestartResidual {
  double step = 0;
  double layers = 0;
};

/// Marches one bore through the hardest restart of each quarter of the run-year. Nothing where the pump never stops.
RestartResidual restart_residual(const assembly::Assembly& assembly, const ErrorResponses& responses);

}  // namespace stillground::forecast
