#pragma once

#include "engine/model/scenario.hpp"

namespace stillground::validation {

/// How far a screening estimate lies from the march of the same scenario, over hours with flow [K], and what it said of
/// that itself.
struct ScreeningTrial {
  double month = 0;     ///< largest of any month's mean
  double hour = 0;      ///< largest of any hour
  double least = 0;     ///< of the least EFT of all years
  double greatest = 0;  ///< of the greatest
  double estimated_month = 0;
  double estimated_hour = 0;
};

/// Screens the scenario and marches it, on one thread.
ScreeningTrial screening_trial(const model::Scenario& scenario);

}  // namespace stillground::validation
