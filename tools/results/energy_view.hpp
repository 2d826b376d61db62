#pragma once

#include <string>
#include <vector>

#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/eft.hpp"

/// How heat and electricity are said and written, the same in every tool. Heat is kept in MWh; electricity in kWh, the
/// unit in which it is bought on both sides of the sea.
namespace stillground::results {

inline constexpr double joules_per_kwh = 3.6e6;
inline constexpr double joules_per_mwh = 3.6e9;

/// What each stretch of hours moved and took as a table, one row a stretch: all of it for machines; duties that the run
/// never had are left out.
present::Table energy_table(const std::vector<energy::Sum>& sums, const EnergySummary& energy);

/// The columns of `more` behind those of `table`; as many rows.
void append_columns(present::Table& table, const present::Table& more);

/// The named run-years and the mean of all, in the units of `system`.
present::Table energy_year_table(const FluidSummary& summary, UnitSystem system);

/// The months of the last run-year, in the units of `system`.
present::Table energy_month_table(const FluidSummary& summary, UnitSystem system);

/// In how many hours a COP was held beyond its curve's points, a sentence with its line's end; empty where nobody
/// knows.
std::string held_text(const EnergySummary& energy);

/// Named run-years and the mean of all, then the months of the last one.
std::string energy_text(const FluidSummary& summary, UnitSystem system);

/// Of the whole run: {"heating": {"value": ..., "units": "MWh"}, ...}, sums over all years.
present::Json energy_json(const EnergySummary& energy);

}  // namespace stillground::results
