#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/fused/stepper.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/observe.hpp"
#include "validation/cvode/cases.hpp"
#include "validation/reference_solutions/field_integrator.hpp"

/// A bore's grid under a load that jumps every hour, by our steppers at 1800 s and by CVODE (BDF of variable order,
/// band solver with an exact Jacobian) at several tolerances. Each says its largest error and the hour's cost; the
/// truth is CVODE at 1e-10. The table takes the loosest tolerance that errs no more than the stepper.

using namespace stillground;

namespace {

constexpr std::size_t hours = 72;
constexpr double watts = 4000;

struct Case {
  model::Scenario scenario = validation::lone_bore();
  std::vector<double> load = validation::jumping_load(hours, watts, false);
  assembly::Assembly assembly = assembly::assemble(scenario);
  assembly::FlowRegimes regimes{scenario, assembly.fluid, assembly.problem.grid};
  march::FlowRegime flowing = regimes.flowing(assembly.fluid.reference).march;
};

std::vector<double> integrated(const Case& at, double tolerance) {
  const reference_solutions::Flow flow = validation::flow_of(at.flowing);
  const reference_solutions::FieldEquations equations(validation::field_of(at.assembly.problem));
  reference_solutions::FieldIntegrator integrator(equations, tolerance);
  std::vector<double> eft;
  for (std::size_t i = 0; i < at.load.size(); ++i) {
    const double end = static_cast<double>(i + 1) * seconds_per_hour;
    integrator.begin(at.load[i], flow, end);
    eft.push_back(integrator.mean_outlet(end));
  }
  return eft;
}

template <class Maker>
std::vector<double> marched(const Case& at, Maker&& maker) {
  const march::Problem& problem = at.assembly.problem;
  march::Workers workers(1);
  const auto stepper = maker(problem, at.assembly.multirate, workers);
  march::State state = simulation::initial_state(problem, at.assembly.multirate);
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  std::vector<double> eft;
  for (const double heat : at.load) {
    eft.push_back(stepper->advance(state, {{0, 0, 0, heat}, &at.flowing}, wall_heat).eft);
  }
  return eft;
}

const Case& the_case() {
  static const Case at;
  return at;
}

const std::vector<double>& truth() {
  static const std::vector<double> eft = integrated(the_case(), 1e-10);
  return eft;
}

template <class March>
void measure(benchmark::State& state, March&& march) {
  truth();
  std::vector<double> eft;
  for (auto _ : state) eft = march(the_case());
  double largest = 0, squares = 0;
  for (std::size_t i = 0; i < hours; ++i) {
    largest = std::max(largest, std::abs(eft[i] - truth()[i]));
    squares += std::pow(eft[i] - truth()[i], 2);
  }
  state.counters["largest_error_K"] = largest;
  state.counters["rms_error_K"] = std::sqrt(squares / hours);
  state.counters["hours"] = benchmark::Counter(hours, benchmark::Counter::kIsIterationInvariantRate);
}

[[maybe_unused]] const bool registered = [] {
  const auto add = [](const std::string& name, auto march) {
    benchmark::RegisterBenchmark(("same_error/" + name).c_str(), [march](benchmark::State& state) {
      measure(state, march);
    })->Unit(benchmark::kMillisecond);
  };
  add("reference", [](const Case& at) {
    return marched(at, [](auto& p, auto& m, auto& w) { return march::make_arkode_stepper(p, m, w); });
  });
  add("fused", [](const Case& at) {
    return marched(at, [](auto& p, auto& m, auto& w) { return march::make_fused_stepper(p, m, w); });
  });
  for (const double tolerance : {1e-2, 3e-3, 1e-3, 1e-4}) {
    char text[32];
    std::snprintf(text, sizeof text, "cvode_band/%.0e", tolerance);
    add(text, [tolerance](const Case& at) { return integrated(at, tolerance); });
  }
  return true;
}();

}  // namespace
