#pragma once

#include <span>
#include <vector>

#include "engine/record/frames.hpp"
#include "tools/energy/energy.hpp"
#include "tools/results/fluid.hpp"
#include "tools/results/limits.hpp"
#include "tools/results/months.hpp"

namespace stillground::results {

/// One run-year.
struct YearFluid {
  int run_year = 0;
  Date from;
  Spread eft;
  Spread lft;
  Spread mean_fluid;
};

/// One calendar month, cut at the ends of its run-year.
struct MonthFluid {
  int run_year = 0;
  MonthSpan span;
  Spread eft;
  Spread lft;
  Spread mean_fluid;
};

/// The share of the hours with flow in which the EFT is at or below a value.
struct DurationCurve {
  std::vector<double> shares;            ///< 0..1
  std::vector<int> run_years;            ///< the named ones
  std::vector<std::vector<double>> eft;  ///< [named year][share] [K]
};

/// Heat and electricity of a run.
struct EnergySummary {
  bool has_heat_pump = false;
  std::vector<energy::Sum> years;   ///< all run-years
  std::vector<energy::Sum> months;  ///< as FluidSummary::months
  energy::Sum all;
};

/// What `eft` tells of a run.
struct FluidSummary {
  std::vector<YearFluid> years;    ///< all run-years
  std::vector<MonthFluid> months;  ///< all months of all run-years
  std::vector<LimitOutcome> limits;
  DurationCurve duration;
  EnergySummary energy;
  std::vector<record::MinuteExtremes> minutes;  ///< all run-years; none where there is no estimate
};

/// Sums up the hours; `header` gives the start, the years and the limits.
FluidSummary summarise(const record::Header& header, std::span<const record::Hour> hours,
                       std::span<const record::MinuteExtremes> minutes = {});

}  // namespace stillground::results
