#pragma once

#include <span>
#include <string>
#include <vector>

#include "tools/outputs/outputs.hpp"
#include "tools/present/figure.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/eft.hpp"

namespace stillground::results {

/// What every form says about where its figures come from.
struct Source {
  std::string file;
  std::string title;
  Date start;
  int years = 0;
  std::string method;               ///< "march" or "screening"
  std::vector<double> phases = {};  ///< when later bores begin to work, since the start [s]
};

Source source_of(const record::Header& header, const std::string& file);

/// All months: least, mean and greatest EFT, LFT and mean fluid temperature, heat and electricity.
present::Table month_table(const FluidSummary& summary);

/// All run-years: the same, and the hours (or months) beyond each limit.
present::Table year_table(const FluidSummary& summary);

/// One row a percent of the hours with flow, one column a named run-year.
present::Table duration_table(const FluidSummary& summary);

/// The EFT's spread in the named run-years.
present::Table named_year_table(const FluidSummary& summary);

/// The months of the first run-year beside those of the last.
present::Table two_year_table(const FluidSummary& summary);

/// Every hour as the result has it: when it starts, and `time` at its end.
present::Table hour_table(const record::Header& header, std::span<const record::Hour> hours);

std::string eft_text(const Source& source, const FluidSummary& summary, UnitSystem system = UnitSystem::si);
present::Json eft_json(const Source& source, const FluidSummary& summary);

/// Month by month, first run-year against the last; every run-year's extremes; the extremes of the other quantities
/// that have limits, each in a panel of its own. All with their limits.
present::Figure eft_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing = {});

}  // namespace stillground::results
