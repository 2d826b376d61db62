#pragma once

#include "tools/present/figure.hpp"
#include "tools/results/eft_view.hpp"
#include "tools/results/fluid.hpp"
#include "tools/results/temperature_scale.hpp"

/// The panels of one fluid temperature with the limits on it.
namespace stillground::results {

/// Month by month, the first run-year against the last. A run of one year shows here where a limit was first left.
present::Panel month_panel(const Source& source, const FluidSummary& summary, Quantity quantity,
                           const TemperatureScale& scale);

/// Greatest hour, mean and least hour of every run-year, and the extreme months where a limit judges them.
present::Panel year_panel(const Source& source, const FluidSummary& summary, Quantity quantity,
                          const TemperatureScale& scale);

}  // namespace stillground::results
