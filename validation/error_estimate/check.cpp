// Source: none: finer marches of the same scenario, as Richardson 1911 and Roache 1994 measure an error
// Tier:      full
#include <fmt/format.h>

#include <algorithm>

#include "engine/forecast/error_estimate.hpp"
#include "tests/march_scenario.hpp"
#include "validation/error_estimate/random_scenario.hpp"
#include "validation/error_estimate/trial.hpp"

using namespace stillground;

namespace {

constexpr const char* source =
    "a march of ours with half the cells' size and a quarter of the step, refinement being the measure of "
    "discretisation error: Richardson 1911, Phil. Trans. R. Soc. A 210, 307; Roache 1994, J. Fluids Eng. 116, 405 "
    "[both "
    "from memory]";
constexpr const char* tolerance =
    "what the estimate promises: no less than the true error, and no more than ten times it";

/// Loads that jump at random every hour by up to 80 W/m: the hardest there are.
model::Scenario jumping(double step) {
  model::Scenario s = test::scenario(1, 1);
  test::Noise noise;
  model::HourlySeries load;
  for (int hour = 0; hour < hours_per_year; ++hour) load.values.push_back(7200 * (noise() - 0.5));
  s.loads = model::GroundLoads{load};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  s.run.step = step;
  return s;
}

/// A year of heat given to the ground in summer and drawn in winter, without a pause.
model::Scenario seasonal(model::Scenario s, double watts) {
  model::HourlySeries load;
  for (int hour = 0; hour < hours_per_year; ++hour) {
    load.values.push_back(watts * (-std::cos(2 * std::acos(-1.0) * hour / hours_per_year) + 0.2));
  }
  s.loads = model::GroundLoads{load};
  s.heat_pump.reset();
  return s;
}

model::Scenario mixed_depths() {
  model::Scenario s = test::scenario(1, 1);
  s.layout = model::Positions{{{0, 0, 1.8, 110, 0}, {6, 0, 1.8, 80, 0}, {12, 0, 1.8, 110, 0}}};
  s.loads = test::building(3 * 4500);
  return s;
}

model::Scenario many_layers() {
  model::Scenario s = test::scenario(1, 1);
  s.ground.layers = {{4, "fill", {0.8, 1.7e6}},  {6.5, "peat", {0.6, 3.2e6}},
                     {21, "sand", {2.2, 2.6e6}}, {22.2, "clay", {1.2, 2.7e6}},
                     {58, "marl", {1.9, 2.2e6}}, {std::numeric_limits<double>::infinity(), "granite", {3.3, 2.3e6}}};
  return s;
}

void parts(validation::Claim& claim) {
  const model::Scenario lone = test::scenario(1, 1);
  const auto lone_estimate = forecast::estimate_errors(assembly::assemble(lone));
  const auto lone_run = validation::all_hours(lone);
  const auto by = [&](const response::Refinement& finer) {
    return validation::largest_difference(lone_run,
                                          validation::all_hours(response::refined(assembly::assemble(lone), finer)));
  };
  validation::bounded(claim, "pumps, on and off: step alone", lone_estimate.step, by({1, 1, 4}));
  validation::bounded(claim, "pumps, on and off: cells alone", lone_estimate.grid, by({2, 2, 1}));

  for (const double hours : {24.0, 168.0}) {
    model::Scenario square = seasonal(test::scenario(2, 2), 4 * 90 * 40);
    square.run.refresh = hours * seconds_per_hour;
    square.run.clocks = model::Run::Clocks::one;  // nothing but the refresh may differ
    model::Scenario often = square;
    often.run.refresh = seconds_per_hour;
    const auto estimate = forecast::estimate_errors(assembly::assemble(square));
    validation::bounded(claim, fmt::format("2 x 2, seasonal: refresh of {:g} h alone", hours), estimate.refresh,
                        validation::largest_difference(validation::all_hours(square), validation::all_hours(often)));
  }
}

void cases(validation::Claim& claim) {
  const auto truer = validation::all_hours(validation::finer(jumping(900), validation::truth));
  for (const double step : {3600.0, 1800.0, 900.0}) {
    put_on_trial(claim, fmt::format("one bore, jumping load, {:g} min", step / 60), jumping(step), truer);
  }
  put_on_trial(claim, "one bore, six layers, pumps, on and off", many_layers());
  put_on_trial(claim, "2 x 2, pumps, on and off, a day", test::scenario(2, 2));
  model::Scenario weekly = test::scenario(2, 2);
  weekly.run.refresh = 168 * seconds_per_hour;
  put_on_trial(claim, "2 x 2, pumps, on and off, a week", weekly);
  put_on_trial(claim, "three of two depths, pumps, on and off", mixed_depths());
}

/// Drawn for this check alone: the estimate was made on other seeds.
void random(validation::Claim& claim) {
  validation::Curve drawn{"scenarios", {}, true};
  double least = 1, most = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const model::Scenario scenario = validation::random_scenario(seed, seed == 20 ? 2 : 1);
    const auto outcome = put_on_trial(claim, fmt::format("{}: {}", seed, validation::in_words(scenario)), scenario);
    drawn.points.emplace_back(outcome.error, outcome.estimate);
    least = std::min(least, outcome.error);
    most = std::max(most, outcome.error);
  }
  claim.plot({"Estimated before the run against found by a finer march",
              "true error of an hour's EFT [K]",
              "estimated error [K]",
              true,
              true,
              {drawn,
               {"as large as the error", {{least, least}, {most, most}}, false},
               {"ten times as large", {{least, 10 * least}, {most, 10 * most}}, false}}});
}

/// Found among some 400 further seeds.
void tightest(validation::Claim& claim) {
  const auto drawn = [](std::uint64_t seed, const model::Scenario& s) {
    return fmt::format("{}: {}", seed, validation::in_words(s));
  };
  for (const std::uint64_t seed : {346, 393, 624}) {
    const model::Scenario scenario = validation::random_scenario(seed, 1);
    put_on_trial(claim, drawn(seed, scenario), scenario);
  }
  struct Missed {
    std::uint64_t seed = 0;
    double bound = 0;  ///< of the error over the estimate
  };
  for (const auto& [seed, bound] : {Missed{264, 3.3}, Missed{617, 2.2}, Missed{110, 1.2}}) {
    const model::Scenario scenario = validation::random_scenario(seed, 1);
    const double error = validation::largest_difference(
        validation::all_hours(scenario), validation::all_hours(validation::finer(scenario, validation::truth)));
    claim.known_absolute_miss(drawn(seed, scenario) + ", error over estimate", 0,
                              error / forecast::estimate_errors(assembly::assemble(scenario)).total, 1, bound,
                              "Reynolds numbers of 2150 to 2500 for days: there a colder fluid has a worse film, which "
                              "makes it colder still, "
                              "and an error grows by more than the estimate's own feedback");
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::estimate);
  parts(check.claim({"estimate-parts", "each part of the error estimate bounds the error that it is for",
                     validation::Origin::engine, source,
                     "largest error of an hour's EFT with flow over a year [K], one thing made finer at a time; in the "
                     "column of references a tenth of the estimate and the estimate",
                     tolerance}));
  cases(check.claim({"estimate-cases", "the error estimate bounds the error and is not ten times too wide",
                     validation::Origin::engine, source,
                     "largest error of an hour's EFT with flow over a year [K] against a march with twice the rings, "
                     "layers of half the height, a quarter of the step and an eighth of the refresh interval; in the "
                     "column of references a tenth of the estimate and the estimate; all cases invented",
                     tolerance}));
  random(
      check.claim({"estimate-random", "it does so on twenty scenarios drawn at random, to none of which it was fitted",
                   validation::Origin::engine, source,
                   "as above; ground, bores, loads, flow, step and refresh interval drawn by the seed in front "
                   "(validation/error_estimate/random_scenario.hpp); seed 20 runs two years",
                   tolerance}));
  tightest(check.claim(
      {"estimate-tightest",
       "it does so on the hardest scenarios of some 400 drawn, but for three near the laminar edge",
       validation::Origin::engine, source,
       "as above; the three scenarios in which the error comes nearest to the estimate and the three in which it "
       "exceeds "
       "it, of seeds 100 to 395 and 600 to 700; without the quarter by which all is raised the first three would miss",
       tolerance}));
  return check.finish();
}
