#include "tools/results/eft.hpp"

#include <cstddef>

namespace stillground::results {

namespace {

std::span<const record::Hour> hours_of(std::span<const record::Hour> hours, int run_year) {
  return hours.subspan(first_hour_of(run_year), static_cast<std::size_t>(hours_per_year));
}

DurationCurve duration_of(std::span<const record::Hour> hours, const std::vector<int>& run_years) {
  DurationCurve curve;
  curve.run_years = run_years;
  for (int percent = 0; percent <= 100; ++percent) curve.shares.push_back(percent / 100.0);
  for (const int year : run_years) {
    curve.eft.push_back(duration_curve(hours_of(hours, year), Quantity::eft, curve.shares));
  }
  return curve;
}

}  // namespace

FluidSummary summarise(const record::Header& header, std::span<const record::Hour> hours,
                       std::span<const record::MinuteExtremes> minutes) {
  FluidSummary summary;
  summary.energy.has_heat_pump = header.has_heat_pump;
  summary.energy.all.curves_known = header.has_heat_pump;
  for (int year = 1; year <= header.years; ++year) {
    const std::span<const record::Hour> in_year = hours_of(hours, year);
    summary.years.push_back({year, first_day_of(header.start, year), spread_of(in_year, Quantity::eft),
                             spread_of(in_year, Quantity::lft), spread_of(in_year, Quantity::mean_fluid)});
    summary.energy.years.push_back(energy::sum_of(in_year, header.cop_curves));
    summary.energy.all = summary.energy.all + summary.energy.years.back();
    for (const MonthSpan& span : months_between(header.start, first_hour_of(year), first_hour_of(year + 1))) {
      const std::span<const record::Hour> in_month = hours.subspan(span.first, span.last - span.first);
      summary.months.push_back({year, span, spread_of(in_month, Quantity::eft), spread_of(in_month, Quantity::lft),
                                spread_of(in_month, Quantity::mean_fluid)});
      summary.energy.months.push_back(energy::sum_of(in_month, header.cop_curves));
    }
  }
  summary.limits = judge_all(header, hours, minutes);
  summary.minutes.assign(minutes.begin(), minutes.end());
  summary.duration = duration_of(hours, named_years(header.years));
  return summary;
}

}  // namespace stillground::results
