#pragma once

#include <optional>

#include "engine/assembly/flow_regimes.hpp"
#include "engine/base/errors.hpp"

namespace stillground::assembly {

/// A thermal response test heats one bore evenly for three days (common practice, no source) and is read for R_b*: what
/// the mean of the fluid in and out stands above the bore's mean wall, over the heat per metre. What the legs give each
/// other on the way makes R_b* larger than the local R_b, and how much larger depends on how even the heat is along the
/// bore: between a wall of one temperature and heat of one strength (bore::effective_resistance), as the ground's own
/// resistance has grown until then. Within 0.4 % of what a marched test shows
/// (validation/response_test_entered), where either extreme is 10 % off for a slow bore of 250 m.
inline constexpr double test_duration = 72 * 3600.0;  // [s]

/// Resistance between the bore's wall and the undisturbed ground at a test's end [K m/W]: a line source, E1(r_b^2/(4
/// alpha t))/(4 pi k). Source: Carslaw & Jaeger (1959), 10.4(5) [number from memory].
double ground_at_test_end(const model::Solid& ground, double bore_radius);

/// A bore in a test: mean `ground` along it, `length` [m], `flow` [kg/s], the fluid at its reference temperature.
struct TestedBore {
  model::Solid ground;
  double length = 0;
  double flow = 0;
};

/// R_b* of that bore at a test's end [K m/W], with these resistances of its modes.
double effective_resistance(const model::Scenario& scenario, const LoopFluid& fluid, const TestedBore& tested,
                            const bore::ModeResistances& modes);

/// What a scenario's response test says.
struct ResponseTest {
  double effective = 0;         ///< R_b*, as entered [K m/W]
  double volume_flow = 0;       ///< in the test [m3/s]
  TestedBore tested;            ///< at the test's flow and length
  double computed = 0;          ///< R_b as pipes and grout make it at the test's flow [K m/W]
  double least = 0;             ///< R_b* that the legs' exchange alone would leave of the least R_b [K m/W]
  std::optional<double> local;  ///< R_b that leaves just R_b* [K m/W]; none where R_b* is below `least`
};

/// Finds the local R_b; nothing where the scenario has no measured resistance. `ground`: mean over the bores.
std::optional<ResponseTest> response_test(const model::Scenario& scenario, const LoopFluid& fluid,
                                          const model::Solid& ground);

/// Says what was entered and what follows from it.
Warning measured_resistance(const model::Scenario& scenario, const ResponseTest& test);

}  // namespace stillground::assembly
