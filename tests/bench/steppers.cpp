#include <benchmark/benchmark.h>

#include <functional>
#include <memory>
#include <string>

#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/fused/kernels.hpp"
#include "engine/march/fused/stepper.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/observe.hpp"
#include "engine/simulation/simulation.hpp"
#include "tests/march_scenario.hpp"

/// What an hour's march costs per cell and step, all of the ground's cells counted, one thread or as many as asked for.
/// Heat jumps every hour, the flow never stops, the neighbours' sum is refreshed daily and counted.

using namespace stillground;

namespace {

using Maker =
    std::function<std::unique_ptr<march::Stepper>(const march::Problem&, const march::Multirate&, march::Workers&)>;

model::Scenario field(int rows, int columns, bool two_clocks) {
  model::Scenario s = test::scenario(rows, columns, 20);
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  s.loads = model::ConstantGroundLoad{0};
  s.run.clocks = two_clocks ? model::Run::Clocks::automatic : model::Run::Clocks::one;
  return s;
}

void march_days(benchmark::State& state, const model::Scenario& scenario, int threads, const Maker& maker) {
  const assembly::Assembly assembly = assembly::assemble(scenario);
  const march::Problem& problem = assembly.problem;
  assembly::FlowRegimes regimes(scenario, assembly.fluid, problem.grid);
  const march::FlowRegime& flowing = regimes.flowing(assembly.fluid.reference).march;
  march::Workers workers(threads);
  const march::Multirate& multirate = assembly.multirate;
  const auto stepper = maker(problem, multirate, workers);
  march::State at = simulation::initial_state(problem, multirate);
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  test::Noise noise;
  const auto hour = [&] {
    if (march::update_due(problem, multirate, at)) march::update_neighbours(problem, multirate, at, workers);
    const double heat = 4000 * problem.bores() * (noise() - 0.5);
    benchmark::DoNotOptimize(stepper->advance(at, {{0, 0, 0, heat}, &flowing}, wall_heat));
  };
  for (int warm = 0; warm < 48; ++warm) hour();  // factors, and the first update with something in it
  constexpr int hours = 24;
  for (auto _ : state) {
    for (int h = 0; h < hours; ++h) hour();
  }
  const double cells = static_cast<double>(problem.nr() * problem.nz() * problem.groups.size());
  state.counters["cell_steps"] = benchmark::Counter(cells * hours * seconds_per_hour / multirate.step,
                                                    benchmark::Counter::kIsIterationInvariantRate);
  state.counters["cells"] = cells;
  state.counters["groups"] = static_cast<double>(problem.groups.size());
}

void add(const std::string& name, int rows, int columns, bool two_clocks, int threads, const Maker& maker) {
  benchmark::RegisterBenchmark(
      name.c_str(),
      [=](benchmark::State& state) { march_days(state, field(rows, columns, two_clocks), threads, maker); })
      ->Unit(benchmark::kMillisecond)
      ->MeasureProcessCPUTime()
      ->UseRealTime();
}

[[maybe_unused]] const bool registered = [] {
  const Maker reference = [](const auto& p, const auto& m, auto& w) { return march::make_arkode_stepper(p, m, w); };
  // A further stepper is one line: its maker.
  add("march/reference/one_clock", 10, 10, false, 1, reference);
  for (const march::fused::Kernels* kernels : march::fused::available_kernels()) {
    const Maker fused = [kernels](const auto& p, const auto& m, auto& w) {
      return march::make_fused_stepper(p, m, w, *kernels);
    };
    add(std::string("march/fused_") + kernels->name + "/one_clock", 10, 10, false, 1, fused);
    add(std::string("march/fused_") + kernels->name + "/two_clocks", 10, 10, true, 1, fused);
  }
  const Maker best = [](const auto& p, const auto& m, auto& w) { return march::make_fused_stepper(p, m, w); };
  for (const int threads : {1, 2}) {
    const std::string suffix = "/threads_" + std::to_string(threads);
    add("threads/fused/one_clock" + suffix, 15, 14, false, threads, best);  // 56 groups
    add("threads/fused/two_clocks" + suffix, 15, 14, true, threads, best);
  }
  return true;
}();

}  // namespace
