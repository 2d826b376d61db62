#pragma once

#include "tools/present/figure.hpp"
#include "tools/present/site_plan.hpp"
#include "tools/results/eft_view.hpp"

/// Pictures that a report has besides those of eft, drift, compare and slice.
namespace stillground::results {

/// The share of the hours in which the EFT is at or below a value, in the named run-years, with the limits.
present::Figure duration_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing);

/// Electricity of each run-year by duty, and month by month in the first and the last. Needs heat pumps.
present::Figure energy_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing);

/// The bores from above, numbered in their order, with their plot.
present::SitePlan result_plan(const record::Header& header, const outputs::Drawing& drawing);

}  // namespace stillground::results
