#include "engine/assembly/response_test.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "engine/assembly/shown.hpp"
#include "engine/bore/effective.hpp"

namespace stillground::assembly {

namespace {

/// No bore has less: the key's own least value [K m/W].
constexpr double least_local = 0.005;

/// R_b* rises with R_b.
double local_resistance(double effective, const auto& effective_of) {
  double low = least_local, high = effective;
  while (effective_of(high) < effective) high *= 2;
  constexpr int halvings = 50;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (effective_of(middle) < effective ? low : high) = middle;
  }
  return (low + high) / 2;
}

}  // namespace

double ground_at_test_end(const model::Solid& ground, double bore_radius) {
  const double x = bore_radius * bore_radius / (4 * ground.diffusivity() * test_duration);
  return -std::expint(-x) / (4 * std::numbers::pi * ground.conductivity);
}

double effective_resistance(const model::Scenario& scenario, const LoopFluid& fluid, const TestedBore& tested,
                            const bore::ModeResistances& modes) {
  constexpr double steady = 0;  // no matter what the ground in the bore's place would hold
  const auto network = bore::loop_type(scenario.bore.loop).network(scenario.bore.loop, modes, fluid.capacities, steady);
  return bore::effective_resistance(network, tested.length, tested.flow * fluid.heat_capacity,
                                    ground_at_test_end(tested.ground, scenario.bore.diameter / 2));
}

std::optional<ResponseTest> response_test(const model::Scenario& scenario, const LoopFluid& fluid,
                                          const model::Solid& ground) {
  if (!scenario.bore.resistance) return std::nullopt;
  const model::MeasuredResistance& measured = *scenario.bore.resistance;
  ResponseTest test;
  test.effective = measured.effective;
  test.volume_flow = measured.at_flow.value_or(fluid.flow_per_bore / fluid.density);
  test.tested = {ground, measured.over.value_or(scenario.bore.depth), test.volume_flow * fluid.density};
  auto modes = resistances(scenario, ground.conductivity, pipe_flow(scenario, test.tested.flow, fluid.reference).films);
  test.computed = modes.resistance[0];
  const auto effective_of = [&](double local) {
    modes.resistance[0] = local;
    return effective_resistance(scenario, fluid, test.tested, modes);
  };
  test.least = effective_of(least_local);
  if (test.effective > test.least) test.local = local_resistance(test.effective, effective_of);
  return test;
}

Warning measured_resistance(const model::Scenario& scenario, const ResponseTest& test) {
  const auto resistance = [&](double kept) { return shown(scenario, kept, "K m W-1", 4); };
  const std::string measured =
      fmt::format("the measured bore resistance R_b* of {}, at {} over {},", resistance(test.effective),
                  shown(scenario, 1e3 * test.volume_flow, "L s-1", 2), shown(scenario, test.tested.length, "m", 0));
  if (test.local) {
    return {scenario.place("bore.resistance"),
            fmt::format("{} leaves a local one of {}, which replaces the computed {} at every flow", measured,
                        resistance(*test.local), resistance(test.computed)),
            ""};
  }
  return {scenario.place("bore.resistance"),
          fmt::format("{} cannot be: what the pipes pass to each other on the way makes {} even in a bore "
                      "that resists nothing; the computed one is used instead; say at which flow and over which length "
                      "the test ran (at_flow, over), and look at the legs' spacing",
                      measured, resistance(test.least)),
          "above " + resistance(test.least)};
}

}  // namespace stillground::assembly
