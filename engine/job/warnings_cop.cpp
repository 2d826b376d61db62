#include <fmt/format.h>

#include <algorithm>

#include "engine/assembly/shown.hpp"
#include "engine/job/warnings_parts.hpp"

namespace stillground::job {

namespace {

/// More than any machine reaches between a ground loop and a building.
constexpr double largest_cop = 12;

using Curve = std::vector<model::CopPoint>;

struct LoadSummary {
  const char* key;
  const char* words;
  const Curve& curve;
  bool rises = true;      ///< with EFT, as heating's does; cooling's falls
  const char* slip = "";  ///< what a value beyond the usual may be
};

void wrong_way(const model::Scenario& scenario, const LoadSummary& duty, std::vector<Warning>& warnings) {
  const auto wrong = [&](const model::CopPoint& a, const model::CopPoint& b) {
    return duty.rises ? b.cop < a.cop : b.cop > a.cop;
  };
  const auto at = std::adjacent_find(duty.curve.begin(), duty.curve.end(), wrong);
  if (at == duty.curve.end()) return;
  const auto next = std::next(at);
  warnings.push_back(
      {scenario.place(duty.key),
       fmt::format("the COP of {} {} from {:g} at {} to {:g} at {}: are two columns or signs exchanged?", duty.words,
                   duty.rises ? "falls" : "rises", at->cop, assembly::shown_temperature(scenario, at->eft), next->cop,
                   assembly::shown_temperature(scenario, next->eft)),
       duty.rises ? "warmer fluid raises it" : "warmer fluid lowers it"});
}

void too_high(const model::Scenario& scenario, const LoadSummary& duty, std::vector<Warning>& warnings) {
  const auto by_cop = [](const model::CopPoint& a, const model::CopPoint& b) { return a.cop < b.cop; };
  const auto best = std::max_element(duty.curve.begin(), duty.curve.end(), by_cop);
  if (best == duty.curve.end() || best->cop <= largest_cop) return;
  warnings.push_back({scenario.place(duty.key),
                      fmt::format("the COP of {} is {:g} at {}{}", duty.words, best->cop,
                                  assembly::shown_temperature(scenario, best->eft), duty.slip),
                      fmt::format("usual up to {:g}; common practice, no source", largest_cop)});
}

bool same(const Curve& a, const Curve& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const auto& p, const auto& q) { return p.eft == q.eft && p.cop == q.cop; });
}

}  // namespace

std::vector<Warning> cop_warnings(const model::Scenario& scenario) {
  if (!scenario.heat_pump) return {};
  const model::HeatPump& pump = *scenario.heat_pump;
  std::vector<LoadSummary> duties = {
      {"heat_pump.heating_cop", "heating", pump.heating_cop},
      {"heat_pump.cooling_cop", "cooling", pump.cooling_cop, false, ": is it an EER in Btu/(W h)?"}};
  // Without a curve of its own hot water is made by heating's, of which all is said.
  if (!same(pump.hot_water_cop, pump.heating_cop)) {
    duties.push_back({"heat_pump.hot_water_cop", "hot water", pump.hot_water_cop});
  }
  std::vector<Warning> warnings;
  for (const LoadSummary& duty : duties) {
    wrong_way(scenario, duty, warnings);
    too_high(scenario, duty, warnings);
  }
  return warnings;
}

}  // namespace stillground::job
