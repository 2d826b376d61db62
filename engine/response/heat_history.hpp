#pragma once

#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/response/step_response.hpp"

namespace stillground::response {

/// A run's hours as a superposition predicts them, for one bore in the mean.
struct HeatHistory {
  std::vector<double> before;  ///< [h] sum of the heat into the ground before hour h, hours + 1 entries [W h]
  std::vector<bool> flows;     ///< [h]

  // The film follows the fluid's temperature hour by hour. Where the flow turns laminar a colder fluid meets more
  // resistance, which makes it colder still while heat is drawn: an error of the EFT comes back in the next hour.
  std::vector<float> feedback;        ///< [h] what comes back of an error of the hour before, q' dR_b/dT, >= 0
  std::vector<float> feedback_limit;  ///< [h] and at most: from here to fully laminar flow [K]
};

/// `rise`: of the EFT per watt in every bore. Through a heat pump at the COP of the EFT predicted. Feedback is the
/// largest within 1 K of the fluid's temperature predicted; there is none where a measured R_b replaces the film.
HeatHistory predict_heat(const assembly::Assembly& assembly, const StepResponse& rise);

}  // namespace stillground::response
