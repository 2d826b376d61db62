// Source: none: the march of the same scenario, which other checks hold against something outside
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/base/temperature.hpp"
#include "engine/screen/estimate.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/random_field.hpp"
#include "validation/harness/screening_trial.hpp"
#include "validation/harness/traces.hpp"

using namespace stillground;

namespace {

/// Asked of a screening estimate before there was one.
constexpr double monthly = 0.02, hourly = 0.15;  // [K]

struct Misses {
  double month = 0;  ///< largest of a month's mean, hours with flow [K]
  double hour = 0;   ///< largest of any hour with flow [K]
};

void see(double& largest, double miss) {
  if (!(std::abs(miss) <= largest)) largest = std::abs(miss);
}

/// Screens the scenario and marches it.
Misses misses(const model::Scenario& scenario, const std::string& name, validation::Claim& months) {
  const assembly::Assembly assembly = assembly::assemble(scenario);
  std::vector<record::Hour> estimated;
  screen::estimate(assembly, [&](std::span<const record::Hour> year) {
    estimated.insert(estimated.end(), year.begin(), year.end());
  });
  simulation::Simulation simulation(assembly, 0);
  Misses misses;
  validation::Traces traces;
  std::size_t hour = 0;
  for (int month = 0; month < 12 * scenario.run.years; ++month) {
    double marched = 0, screened = 0, flowing = 0;
    const auto calendar = static_cast<std::size_t>((scenario.run.start.month - 1 + month) % 12);
    for (int i = 0; i < 24 * days_of_month.at(calendar); ++i, ++hour) {
      const record::Hour march = simulation.march_hour();
      const double screen = estimated[hour].eft;
      if (march.flow == 0) continue;
      see(misses.hour, screen - march.eft);
      marched += march.eft;
      screened += screen;
      ++flowing;
    }
    if (flowing == 0) continue;
    see(misses.month, (screened - marched) / flowing);
    traces.add("monthly mean", month / 12.0, marched / flowing - zero_celsius, screened / flowing - zero_celsius);
  }
  months.plot(traces.on({"Monthly mean EFT, " + name, "year", "degC", false, false, {}}));
  return misses;
}

model::Scenario always_on(model::Scenario scenario) {
  scenario.flow.runs = model::Flow::Runs::always;
  return scenario;
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  const std::string setting =
      "EFT [K] over hours with flow, each scenario run both ways: heat pumps whose COP follows the EFT, film that "
      "follows the fluid, hours of load drawn at random between idle ones (tests/march_scenario.hpp), seasons and "
      "geothermal heat";
  auto& months = check.claim({"screening-months", "a screening estimate has the march's monthly means",
                              validation::Origin::engine, "the engine's own march, hour by hour", setting,
                              "0.02 K, so that a search by it ends where the march would"});
  auto& hours = check.claim({"screening-hours", "a screening estimate has the march's hours with load",
                             validation::Origin::engine, "the engine's own march, hour by hour", setting,
                             "0.15 K, at restarts too: the first hour after the fluid has stood is of the hardest"});
  const auto put_on_trial = [&](const std::string& name, const model::Scenario& scenario) {
    const Misses found = misses(scenario, name, months);
    months.absolute(name + ", largest miss", 0, found.month, monthly);
    hours.absolute(name + ", largest miss", 0, found.hour, hourly);
  };
  auto& random = check.claim({"screening-random-short", "a screening estimate says itself how far it may be off",
                              validation::Origin::engine, "the engine's own march, hour by hour",
                              "as screening-own-error, which takes sixty fields and 25 years: six fields drawn at "
                              "random, two years",
                              "what it says of an hour's EFT and of a month's mean"});
  for (std::uint64_t seed = 2001; seed <= 2006; ++seed) {
    const model::Scenario field = validation::random_field(seed, 2);
    const validation::ScreeningTrial trial = validation::screening_trial(field);
    random.between(validation::field_in_words(field) + ", months [K]", 0, trial.estimated_month, trial.month);
    random.between("the same, hours [K]", 0, trial.estimated_hour, trial.hour);
  }
  put_on_trial("one bore, three years", test::scenario(1, 1, 3));
  put_on_trial("one bore whose pump never stops, a year", always_on(test::scenario(1, 1, 1)));
  put_on_trial("6 x 6 bores at 6 m, two years", test::scenario(6, 6, 2));
  return check.finish();
}
