#pragma once

#include <vector>

#include "engine/model/scenario.hpp"
#include "engine/record/frames.hpp"
#include "engine/response/single_bore.hpp"
#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// All hours of a run of the scenario, by one thread.
std::vector<record::Hour> all_hours(const model::Scenario& scenario);

/// Largest difference of the EFT over the hours in which the run's fluid flows [K].
double largest_difference(const std::vector<record::Hour>& run, const std::vector<record::Hour>& finer);

/// What stands for the truth: rings twice as many, cells half as high, a quarter of the step, an eighth of the refresh
/// interval (one hour at least).
inline constexpr response::Refinement truth{2, 2, 4};

/// The scenario made finer in cells and step, and its refresh interval an eighth.
model::Scenario finer(const model::Scenario& scenario, const response::Refinement& by);

/// A true error and what was estimated of it [K].
struct Outcome {
  double error = 0;
  double estimate = 0;
};

/// Verifies the estimate's total by the truth, or by `truer` hours that are already there.
Outcome put_on_trial(Claim& claim, const std::string& at, const model::Scenario& scenario);
Outcome put_on_trial(Claim& claim, const std::string& at, const model::Scenario& scenario,
                     const std::vector<record::Hour>& truer);

/// A row: the error is no more than estimated, and no less than a tenth of it.
void bounded(Claim& claim, const std::string& at, double estimate, double error);

}  // namespace stillground::validation
