#pragma once

#include <string>

#include "tools/present/plan_scale.hpp"
#include "tools/present/site_plan.hpp"

namespace stillground::present {

/// The land as SVG, its strips without bores, and what is kept clear; empty without a plot. Its hatching has the id
/// that ends in "-hatch".
std::string ground_of(const SitePlan& plan, const PlanScale& scale);

}  // namespace stillground::present
