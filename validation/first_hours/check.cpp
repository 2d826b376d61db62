// Source: plug flow in both legs with exchange, by characteristics: validation/reference_solutions/plug_flow_bore.hpp
#include <fmt/format.h>

#include <limits>

#include "engine/assembly/assembly.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/fixed_flow_march.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/plug_flow_bore.hpp"

using namespace stillground;

namespace {

constexpr double undisturbed = 283.15;  // [K]
constexpr double per_metre = 50;        // [W/m]
constexpr double conductivity = 2.4, heat_capacity = 2.2e6;
constexpr int cells = 40;

struct Case {
  double depth = 0;  ///< [m]
  double flow = 0;   ///< [m3/s]
};
constexpr Case usual[] = {{100, 0.35e-3}, {100, 0.25e-3}, {150, 0.5e-3}, {150, 0.4e-3}, {200, 0.6e-3}, {250, 0.8e-3}};

model::Scenario scenario(const Case& c) {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {conductivity, heat_capacity}}};
  s.ground.undisturbed = model::MeanOverBore{undisturbed};
  s.bore.top = 2;
  s.bore.depth = c.depth;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Grid{1, 1, 6};
  s.flow = {c.flow, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{per_metre * c.depth};
  s.run.years = 1;
  return s;
}

reference_solutions::Chain chain(const bore::Mode& mode) {
  return {mode.inner, mode.middle, mode.outer, mode.inner_capacity, mode.outer_capacity};
}

reference_solutions::Chains chains(const march::FlowRegime& regime) {
  return {chain(regime.networks.front().modes[0]), chain(regime.networks.front().modes[1])};
}

using Hours = std::vector<reference_solutions::PlugFlowHour>;

/// Fluid that comes back, hour by hour [K above the ground].
struct Returning {
  std::vector<double> reference, ours;
};

Returning returning(const Case& c, const Hours& hours) {
  const model::Scenario s = scenario(c);
  const assembly::Assembly assembly = assembly::assemble(s);
  assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid);
  const march::FlowRegime& regime = regimes.flowing(undisturbed).march;
  Returning all;
  all.reference = reference_solutions::returning_fluid({.length = c.depth,
                                                        .radius = s.bore.diameter / 2,
                                                        .heat_rate = regime.heat_rate,
                                                        .fluid = regime.networks.front().capacity[0],
                                                        .flowing = chains(regime),
                                                        .standing = chains(regimes.standing().march),
                                                        .conductivity = conductivity,
                                                        .heat_capacity = heat_capacity},
                                                       hours, cells);
  validation::FixedFlowMarch march(assembly.problem, assembly.multirate);
  for (const auto& hour : hours) {
    const auto mean = hour.flows ? march.hour(hour.heat, regime) : march.hour(0, regimes.standing().march);
    all.ours.push_back(mean.eft - undisturbed);
  }
  return all;
}

void compare_steps(validation::Claim& claim) {
  validation::Traces traces;
  for (const Case& c : usual) {
    const Returning all = returning(c, Hours(6, {true, per_metre * c.depth}));
    const std::string at = fmt::format("{:g} m, {:g} L/s", c.depth, 1e3 * c.flow);
    for (std::size_t i = 0; i < all.ours.size(); ++i) {
      claim.absolute(fmt::format("{}, hour {}", at, i + 1), all.reference[i], all.ours[i], 0.05);
      traces.add(at, static_cast<double>(i) + 0.5, all.reference[i], all.ours[i]);
    }
  }
  claim.plot(traces.on({"Fluid that comes back after a step of 50 W/m", "hours", "rise [K]", false, false, {}}));
}

/// Half a day of heat, the fluid standing for `rest` hours, heat again; or flow in every other hour.
void compare_restarts(validation::Claim& claim) {
  for (const Case& c : {usual[0], usual[3], usual[5]}) {
    const reference_solutions::PlugFlowHour on{true, per_metre * c.depth}, off{false, 0};
    const std::string at = fmt::format("{:g} m, {:g} L/s", c.depth, 1e3 * c.flow);
    for (const int rest : {1, 6, 12}) {
      Hours hours(12, on);
      hours.insert(hours.end(), static_cast<std::size_t>(rest), off);
      hours.insert(hours.end(), 6, on);
      const Returning all = returning(c, hours);
      const auto restart = static_cast<std::size_t>(12 + rest);
      validation::WorstCase later;
      claim.absolute(fmt::format("{}, {} h of rest, hour 1", at, rest), all.reference[restart], all.ours[restart], 0.1);
      for (std::size_t i = restart + 1; i < hours.size(); ++i)
        later.compare_absolute(fmt::format("hour {}", i - restart + 1), all.reference[i], all.ours[i]);
      later.row(claim, fmt::format("{}, {} h of rest, later", at, rest), 0.05);
    }
    Hours hours;
    for (int i = 0; i < 16; ++i) hours.push_back(i % 2 == 0 ? on : off);
    const Returning all = returning(c, hours);
    validation::WorstCase every;
    for (std::size_t i = 0; i < hours.size(); i += 2)
      every.compare_absolute(fmt::format("hour {}", i + 1), all.reference[i], all.ours[i]);
    every.row(claim, at + ", every other hour", 0.1);
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string source =
      "plug flow in both legs that exchange heat with grout and rings of ground, in a closed loop, by characteristics: "
      "validation/reference_solutions/plug_flow_bore.hpp";
  const std::string setup =
      "hourly mean of the fluid that comes back [K above the ground], 50 W/m, single U, the networks that a run makes, "
      "steps of 1800 s, the preset; at these usual flows the fluid changes by 3 to 5 K on its way";
  compare_steps(check.claim({"first-hours-step",
                             "in the first hours after a step of heat the fluid comes back as plug flow brings it",
                             validation::Origin::computed, source, setup + "; stepped on while fluid circulates",
                             "0.05 K: a hundredth of what the fluid changes on its way"}));
  compare_restarts(check.claim(
      {"first-hours-restart", "after a rest the fluid comes back as plug flow brings it: what stood in the legs first",
       validation::Origin::computed, source,
       setup + "; 12 hours of heat, 1, 6 or 12 hours in which the fluid stands, heat again; heat and rest by the hour",
       "0.1 K in the hour of the restart, 0.05 K from the next on: chosen before the first comparison"}));
  return check.finish();
}
