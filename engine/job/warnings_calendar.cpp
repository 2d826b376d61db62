#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "engine/job/warnings_parts.hpp"

namespace stillground::job {

namespace {

constexpr int first_year = 1950, last_year = 2150;
/// Summer and winter reach so far from their hottest and coldest day.
constexpr double half_season = 60;  // days

/// The coldest day of the surface [days after New Year]; none where the ground is given without seasons.
std::optional<double> coldest_day(const model::Scenario& scenario) {
  const auto* surface = std::get_if<model::SeasonalSurface>(&scenario.ground.undisturbed);
  if (!surface || surface->swing == 0) return std::nullopt;
  return surface->coldest / seconds_per_day;
}

/// Days between two days of the year, the shorter way round.
double days_apart(double a, double b) {
  return std::abs(std::remainder(a - b, static_cast<double>(days_per_year)));
}

/// A load's largest hour within 60 days of one day of the year, and in the rest of it.
struct Peaks {
  double within = 0;   ///< [W]
  double without = 0;  ///< [W]
  long hour = 0;       ///< of the run, of the peak within

  void look_at(double load, long number, bool inside) {
    double& most = inside ? within : without;
    if (load <= most) return;
    most = load;
    if (inside) hour = number;
  }
};

void in_the_other_season(const assembly::Assembly& assembly, const Peaks& peaks, const char* load, const char* season,
                         std::vector<Warning>& warnings) {
  if (peaks.within <= 1.01 * peaks.without) return;  // a load that is as large in the other months has no season
  const model::Scenario& scenario = assembly.scenario;
  const Date day = plus_days(scenario.run.start, peaks.hour / 24);
  const bool known = coldest_day(scenario).has_value();
  warnings.push_back(
      {scenario.place("loads"),
       fmt::format("{} peaks in {}, in {}: are the columns exchanged, or does the first row belong to another month?",
                   load, month_name(day.month), season),
       known ? "seasons by ground.undisturbed.coldest_day" : "seasons taken for those north of the equator"});
}

void seasons(const assembly::Assembly& assembly, std::vector<Warning>& warnings) {
  constexpr double january = 25;  // the coldest day of temperate sites north of the equator
  if (!std::holds_alternative<model::BuildingLoads>(assembly.scenario.loads)) return;
  const double coldest = coldest_day(assembly.scenario).value_or(january);
  const double hottest = coldest + days_per_year / 2.0;
  const int start = hour_of_year(assembly.scenario.run.start);
  Peaks heating_in_summer, cooling_in_winter;
  for (long hour = 0; hour < assembly.hours(); ++hour) {
    const loop::Demand demand = assembly.loads.hour(hour);
    const double day = static_cast<double>((start + hour) % hours_per_year) / 24;
    heating_in_summer.look_at(demand.heating, hour, days_apart(day, hottest) < half_season);
    cooling_in_winter.look_at(demand.cooling + demand.cooling_direct, hour, days_apart(day, coldest) < half_season);
  }
  in_the_other_season(assembly, heating_in_summer, "heating", "summer", warnings);
  in_the_other_season(assembly, cooling_in_winter, "cooling", "winter", warnings);
}

}  // namespace

std::vector<Warning> calendar_warnings(const assembly::Assembly& assembly) {
  std::vector<Warning> warnings;
  seasons(assembly, warnings);
  const model::Scenario& scenario = assembly.scenario;
  const int year = scenario.run.start.year;
  if (year < first_year || year > last_year) {
    warnings.push_back({scenario.place("run.start"),
                        fmt::format("the run starts in the year {}: is that what is meant?", year),
                        fmt::format("usual from {} to {}", first_year, last_year)});
  }
  return warnings;
}

}  // namespace stillground::job
