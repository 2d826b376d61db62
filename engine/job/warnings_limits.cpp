#include <fmt/format.h>

#include "engine/assembly/shown.hpp"
#include "engine/job/warnings_parts.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::job {

namespace {

using Quantity = model::Limit::Quantity;

/// What a heat pump's evaporator wants between its coldest fluid and ice [K].
constexpr double margin = 3;

/// How far the fluid that leaves the heat pumps lies below the limited quantity at the heating peak, in parts of the
/// difference between entering and leaving.
double part_of_difference(Quantity quantity) {
  switch (quantity) {
    case Quantity::eft:
      return 1;
    case Quantity::mean_fluid:
      return 0.5;
    case Quantity::lft:
      return 0;
  }
  return 0;
}

void broken_by_the_ground(const assembly::Assembly& assembly, const model::Limit& limit,
                          std::vector<Warning>& warnings) {
  const model::Scenario& scenario = assembly.scenario;
  const double ground = assembly.fluid.reference;
  const bool least = limit.side == model::Limit::Side::least;
  if (least ? limit.value <= ground : limit.value >= ground) return;
  const std::string key = "limits." + limit.name;
  warnings.push_back(
      {scenario.place(key),
       fmt::format("{} of {} is broken by the undisturbed ground itself, which has {} along the bores", limit.name,
                   assembly::shown_temperature(scenario, limit.value), assembly::shown_temperature(scenario, ground)),
       least ? "a least temperature lies below the ground's" : "a greatest temperature lies above the ground's"});
}

void near_freezing(const assembly::Assembly& assembly, const model::Limit& limit, const assembly::GroundHeat& taken,
                   std::vector<Warning>& warnings) {
  if (limit.side != model::Limit::Side::least) return;
  const model::Scenario& scenario = assembly.scenario;
  const double freezing = materials::freezing_point(scenario.fluid);
  const double leaving = limit.value - part_of_difference(limit.quantity) * taken.difference;
  if (leaving >= freezing + margin) return;
  warnings.push_back(
      {scenario.place("limits." + limit.name),
       fmt::format("{} of {} lets the fluid leave the heat pumps at {} at the heating peak; it freezes at {}",
                   limit.name, assembly::shown_temperature(scenario, limit.value),
                   assembly::shown_temperature(scenario, leaving), assembly::shown_temperature(scenario, freezing)),
       fmt::format("{} above the freezing point; common practice, no source",
                   assembly::shown(scenario, margin, "K", 1))});
}

}  // namespace

std::vector<Warning> limit_warnings(const assembly::Assembly& assembly, const assembly::GroundHeats& heats) {
  std::vector<Warning> warnings;
  for (const model::Limit& limit : assembly.scenario.limits) {
    broken_by_the_ground(assembly, limit, warnings);
    near_freezing(assembly, limit, heats.taken, warnings);
  }
  return warnings;
}

}  // namespace stillground::job
