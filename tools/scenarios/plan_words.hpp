#pragma once

#include <string>

#include "tools/scenarios/plan.hpp"

/// What a plan's table, text and drawing say in the same words.
namespace stillground::scenarios {

/// "2031-09-01", with its hour if it is not midnight: an instant of the run [s].
std::string date_of(const model::Run& run, double seconds);

/// "1 bore", "8 bores".
std::string count_text(std::size_t bores);

/// What the layout comes to, in one sentence.
std::string sums_sentence(const PlanSums& sums, UnitSystem system);

}  // namespace stillground::scenarios
