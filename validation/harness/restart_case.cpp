#include "validation/harness/restart_case.hpp"

#include <limits>

#include "engine/simulation/simulation.hpp"
#include "engine/transit/hour_march.hpp"
#include "validation/reference_solutions/plug_flow_minutes.hpp"

namespace stillground::validation {

namespace {

constexpr double ground_temperature = 285.15;

/// 120 m of single U in uniform ground, water. Invented.
model::Scenario plain_bore() {
  model::Scenario s;
  s.title = "restart";
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "ground", {2.2, 2.2e6}}};
  s.ground.undisturbed = model::MeanOverBore{ground_temperature};
  s.bore.top = 1.5;
  s.bore.depth = 120;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Positions{{{0, 0, 1.5, 120, 0}}};
  s.fluid = {model::Antifreeze::none, 0, model::Fluid::Basis::mass};
  s.flow = {0.45e-3, model::Flow::Amount::per_bore, model::Flow::Runs::with_load};
  s.run.start = {2027, 1, 1};
  s.run.years = 1;
  s.file = "restart.yaml";
  return s;
}

RestartCase restart(const std::string& name, model::Scenario scenario) {
  RestartCase one{name, std::move(scenario), {}, {}};
  const auto add = [&](int hours, double heat) {
    one.heat.insert(one.heat.end(), static_cast<std::size_t>(hours), heat);
  };
  const auto look = [&] { one.restarts.push_back(static_cast<long>(one.heat.size())); };
  const double heat = -6000;  // 50 W/m
  add(12, heat);
  add(1, 0);
  look();
  add(8, heat);
  add(3, 0);
  look();
  add(4, heat);
  model::GroundLoads loads;
  loads.to_ground.values = one.heat;
  loads.to_ground.values.resize(hours_per_year, 0.0);
  one.scenario.loads = loads;
  return one;
}

std::array<reference_solutions::PlugMode, 2> modes(const bore::Network& network) {
  std::array<reference_solutions::PlugMode, 2> result;
  for (std::size_t m = 0; m < 2; ++m) {
    const bore::Mode& mode = network.modes.at(m);
    result.at(m) = {{mode.reads[0], mode.reads[1]},
                    {mode.gives[0], mode.gives[1]},
                    mode.inner,
                    mode.middle,
                    mode.outer,
                    mode.inner_capacity,
                    mode.outer_capacity};
  }
  return result;
}

reference_solutions::PlugBore plug_bore(const assembly::Assembly& assembly) {
  const model::Scenario& s = assembly.scenario;
  assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid, assembly.sections);
  const bore::Network& still = regimes.standing().march.networks.front();
  reference_solutions::PlugBore bore;
  bore.length = s.bore.depth;
  bore.radius = s.bore.diameter / 2;
  bore.conductivity = s.ground.layers.front().solid.conductivity;
  bore.heat_capacity = s.ground.layers.front().solid.heat_capacity;
  bore.standing = modes(still);
  bore.capacity = {still.capacity[0], still.capacity[1]};
  const auto& flowing = regimes.flowing(assembly.fluid.reference).march;
  bore.flowing = modes(flowing.networks.front());
  bore.heat_rate = flowing.heat_rate;
  return bore;
}

}  // namespace

std::vector<RestartCase> restart_cases() {
  model::Scenario poor = plain_bore();
  poor.bore.grout.solid = {0.7, 3.0e6};
  model::Scenario coaxial = plain_bore();
  coaxial.fluid = {model::Antifreeze::propylene_glycol, 0.25, model::Fluid::Basis::mass};
  coaxial.flow.rate = 0.2e-3;
  coaxial.bore.loop = model::Coaxial{{"", 0.05, 0.0046, 0.4, 1.9e6, 0}, model::Coaxial::Down::annulus};
  coaxial.bore.pipe = {"", 0.110, 0.0066, 0.42, 1.9e6, 0};
  return {restart("single U", plain_bore()), restart("single U, poor grout", poor),
          restart("coaxial, laminar", coaxial)};
}

RestartMinutes march_restarts(const RestartCase& restart) {
  const assembly::Assembly assembly = assembly::assemble(restart.scenario);
  simulation::Simulation simulation(assembly, 1);
  std::vector<record::Hour> hours;
  for (std::size_t h = 0; h < restart.heat.size(); ++h) hours.push_back(simulation.march_hour());
  transit::HourMarch march(assembly, hours);
  const auto rise = reference_solutions::plug_flow_minutes(plug_bore(assembly), restart.heat);
  RestartMinutes minutes;
  for (const long hour : restart.restarts) {
    const auto course = march.courses(hour).front();
    minutes.ours.insert(minutes.ours.end(), course.begin(), course.begin() + 60);
    for (long n = 0; n < 60; ++n) {
      minutes.reference.push_back(ground_temperature + rise[static_cast<std::size_t>(60 * hour + n)]);
    }
    minutes.hourly.push_back(hours[static_cast<std::size_t>(hour)].eft);
  }
  return minutes;
}

}  // namespace stillground::validation
