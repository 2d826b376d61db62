#include "validation/harness/restart_case.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <limits>

#include "engine/simulation/simulation.hpp"
#include "engine/transit/hour_march.hpp"
#include "validation/reference_solutions/plug_flow_minutes.hpp"

namespace stillground::validation {

namespace {

constexpr double ground_temperature = 285.15;
constexpr double drawn = -6000;  // [W], 50 W/m

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
  add(12, drawn);
  add(1, 0);
  look();
  add(8, drawn);
  add(3, 0);
  look();
  add(4, drawn);
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
  const auto rise = reference_solutions::plug_flow_minutes(
      plug_bore(assembly), 60 * restart.heat.size(),
      [&](double second) { return restart.heat.at(static_cast<std::size_t>(second / seconds_per_hour)); });
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

std::vector<PeakMinutes> march_peaks(const RestartCase& bore, const model::LoadPeak& peak) {
  constexpr long looked_at = 26;  // so late that the engine does not follow the bore from its rest on
  model::Scenario s = bore.scenario;
  s.loads = model::ConstantGroundLoad{drawn};
  s.peak = peak;
  const assembly::Assembly assembly = assembly::assemble(s);
  simulation::Simulation simulation(assembly, 1);
  std::vector<record::Hour> hours;
  for (long h = 0; h < looked_at + 2; ++h) hours.push_back(simulation.march_hour());
  const auto plug = plug_bore(assembly);
  const double trip = (plug.capacity[0] + plug.capacity[1]) * plug.length / plug.heat_rate;
  const double last = seconds_per_hour - peak.duration, begin = looked_at * seconds_per_hour;
  const double beside = (seconds_per_hour - peak.factor * peak.duration) / last;  // what the rest of the hour has
  const std::array places{0.0, std::max(0.0, last - trip), last};
  std::vector<std::function<double(double)>> heats;
  for (const double from : places) {
    heats.push_back([=](double second) {
      const double within = second - begin;
      if (within < 0 || within >= seconds_per_hour) return drawn;
      return drawn * (within >= from && within < from + peak.duration ? peak.factor : beside);
    });
  }
  transit::HourMarch march(assembly, hours);
  const auto courses = march.courses(looked_at);
  constexpr std::size_t before = 60 * looked_at;
  const auto rises = reference_solutions::plug_flow_minutes(plug, before + courses.front().size(), before, heats);
  std::vector<PeakMinutes> all;
  for (std::size_t n = 0; n < places.size(); ++n) {
    all.push_back({.from = places.at(n), .ours = courses.at(n), .reference = {}});
    for (std::size_t i = before; i < rises[n].size(); ++i)
      all.back().reference.push_back(ground_temperature + rises[n][i]);
  }
  return all;
}

}  // namespace stillground::validation
