#pragma once

#include "engine/config/context.hpp"
#include "engine/config/section.hpp"
#include "engine/model/loads.hpp"

namespace stillground::config {

/// A year of hours from a table of twelve months that `section` names at "monthly". In each month a duty's peak stands
/// for its hours at the month's end, and what is left of the month's energy is spread evenly over the other hours: the
/// peak meets ground that has carried the month already. Without a peak the energy is spread over the whole month.
/// InputError where a peak and its hours hold more than the month's energy, where the peak lies below the month's
/// mean, or where a column `month` is not January to December in order.
model::BuildingLoads read_monthly(const Section& section, Context& context);

}  // namespace stillground::config
