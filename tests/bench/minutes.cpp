#include <benchmark/benchmark.h>

#include <vector>

#include "engine/simulation/simulation.hpp"
#include "engine/transit/hour_march.hpp"
#include "engine/transit/minute_extremes.hpp"
#include "tests/march_scenario.hpp"

/// What the minutes of a run cost after it: the farthest ones of 25 years, and one hour with what goes before it.

using namespace stillground;

namespace {

struct Run {
  assembly::Assembly assembly;
  std::vector<record::Hour> hours;
};

/// 6 x 6 bores for 25 years of hours at random, marched once.
const Run& run() {
  static const Run made = [] {
    const model::Scenario s = test::scenario(6, 6, 25);
    return Run{assembly::assemble(s), test::march(s, 25 * hours_per_year)};
  }();
  return made;
}

void farthest_minutes(benchmark::State& state) {
  const Run& made = run();
  for (auto _ : state) benchmark::DoNotOptimize(transit::minute_extremes(made.assembly, made.hours));
}

void one_hour(benchmark::State& state) {
  long hour = 9 * hours_per_year;
  while (run().hours[static_cast<std::size_t>(hour)].flow <= 0) ++hour;
  transit::HourMarch march(run().assembly, run().hours);
  for (auto _ : state) benchmark::DoNotOptimize(march.courses(hour));
}

BENCHMARK(farthest_minutes)
    ->Name("minutes/farthest_of_25_years")
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime();
BENCHMARK(one_hour)->Name("minutes/one_hour")->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime();

}  // namespace
