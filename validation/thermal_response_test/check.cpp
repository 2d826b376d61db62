// Source: line-source reading of a thermal response test, Mogensen 1983 [from memory]
#include <fmt/format.h>

#include <cmath>
#include <numbers>
#include <set>
#include <utility>

#include "engine/bore/effective.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/line_source_reading.hpp"
#include "validation/reference_solutions/bore_response.hpp"

using namespace stillground;
using validation::Reading;

namespace {

constexpr double undisturbed = 284.15;  // [K]
constexpr double heat = 60;             // [W/m]
constexpr int hours = 72, first_hour = 10;
const std::string layered = "clay, sand, limestone";

struct Site {
  std::string name;
  model::Scenario scenario;
};

/// Invented sites.
Site site(const std::string& name, const std::vector<model::Layer>& layers, const model::Solid& grout,
          double diameter) {
  auto s = test::scenario(1, 1);
  s.run.clocks = model::Run::Clocks::one;  // a test is over before the slow rings have stepped more than twice
  s.ground.layers = layers;
  s.ground.undisturbed = model::MeanOverBore{undisturbed};
  s.bore.top = 1.5;
  s.bore.depth = 120;
  s.bore.diameter = diameter;
  s.bore.grout.solid = grout;
  s.heat_pump.reset();
  s.fluid = {};
  s.flow = {0.5e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{heat * 120};
  return {name, s};
}

std::vector<Site> sites() {
  constexpr double deep = std::numeric_limits<double>::infinity();
  return {site("clay", {{deep, "clay", {1.5, 2.6e6}}}, {0.9, 3.2e6}, 0.15),
          site("sandstone", {{deep, "sandstone", {2.4, 2.2e6}}}, {1.6, 2.8e6}, 0.14),
          site("gneiss", {{deep, "gneiss", {3.2, 2.2e6}}}, {2.0, 2.4e6}, 0.13),
          site(layered, {{16, "clay", {1.4, 2.6e6}}, {56, "sand", {2.1, 2.5e6}}, {deep, "limestone", {2.8, 2.2e6}}},
               {1.6, 2.8e6}, 0.14)};
}

/// What is known of a site, and what exact theory makes of it.
struct Truth {
  double conductivity = 0, capacity = 0;             // of the ground, means over the bore's length
  double passed_on = 0;                              // what the heat between the legs adds to R_b [K m/W]
  double resistance = 0;                             // R_b*, with it
  std::vector<reference_solutions::BorePart> parts;  // the bore in its layers
  double fluid = 0;                                  // capacity of both legs [J/(m K)]
  double radius = 0, top = 0, depth = 0;
};

/// Hourly rise of the mean fluid temperature by exact theory (at mid-hour).
double exact_rise(const Truth& t, const std::vector<reference_solutions::BorePart>& parts, double conductivity,
                  int hour) {
  const double time = (hour + 0.5) * seconds_per_hour;
  return heat *
         (reference_solutions::fluid_response(parts, t.radius, t.fluid, time) +
          reference_solutions::effect_of_ends(conductivity, t.capacity, t.radius, t.top, t.depth, time) + t.passed_on);
}

std::vector<double> exact_rise(const Truth& t) {
  std::vector<double> rise;
  for (int hour = 0; hour < hours; ++hour) rise.push_back(exact_rise(t, t.parts, t.conductivity, hour));
  return rise;
}

/// Conductivity and R_b* for which exact theory of a bore in uniform ground lies closest to the hours (least squares,
/// Gauss and Newton).
Reading fitted(const std::vector<double>& rise, const Truth& t) {
  const reference_solutions::BorePart& first = t.parts.front();
  const double whole = first.inner + first.middle + first.outer;
  const auto model = [&](const Reading& at, int hour) {
    const double part = (at.resistance - t.passed_on) / whole;
    return exact_rise(t,
                      {{1, at.conductivity, t.capacity, part * first.inner, part * first.middle, part * first.outer,
                        first.inner_grout, first.outer_grout}},
                      at.conductivity, hour);
  };
  Reading at{2, 0.1};
  for (int iteration = 0; iteration < 8; ++iteration) {
    double kk = 0, kr = 0, rr = 0, ke = 0, re = 0;
    for (int hour = first_hour; hour < hours; ++hour) {
      const double here = model(at, hour);
      const double by_k = (model({at.conductivity * 1.001, at.resistance}, hour) - here) / (at.conductivity * 0.001);
      const double by_r = (model({at.conductivity, at.resistance * 1.001}, hour) - here) / (at.resistance * 0.001);
      const double error = rise[static_cast<std::size_t>(hour)] - here;
      kk += by_k * by_k, kr += by_k * by_r, rr += by_r * by_r, ke += by_k * error, re += by_r * error;
    }
    const double determinant = kk * rr - kr * kr;
    at.conductivity += (ke * rr - re * kr) / determinant;
    at.resistance += (re * kk - ke * kr) / determinant;
  }
  return at;
}

Truth truth(const assembly::Assembly& assembly, double fluid_temperature) {
  const model::Scenario& s = assembly.scenario;
  assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid);
  const auto films = assembly::pipe_flow(s, assembly.fluid.flow_per_bore, fluid_temperature).films;
  const march::FlowRegime& flowing = regimes.flowing(fluid_temperature).march;
  const march::Group& group = assembly.problem.groups.front();
  Truth t;
  double conductance = 0, internal = 0;
  for (std::size_t k = group.first; k < group.end; ++k) {
    const model::Solid& solid = assembly.problem.grid.solid[k];
    const double share = group.fraction[k] * assembly.problem.grid.height(k) / s.bore.depth;
    const bore::Mode& even = flowing.network(k).modes[0];
    t.parts.push_back({share, solid.conductivity, solid.heat_capacity, even.inner, even.middle, even.outer,
                       even.inner_capacity, even.outer_capacity});
    t.conductivity += share * solid.conductivity;
    t.capacity += share * solid.heat_capacity;
    const auto modes = assembly::resistances(s, solid.conductivity, films);
    conductance += share / modes.resistance[0];
    internal += share * 2 * modes.resistance[1];
  }
  t.passed_on = bore::effective_resistance_uniform_flux({0, internal}, s.bore.depth, assembly.fluid.flow_per_bore,
                                                        assembly.fluid.heat_capacity);
  t.resistance = 1 / conductance + t.passed_on;
  t.fluid = assembly.fluid.capacities.stream[0] + assembly.fluid.capacities.stream[1];
  t.radius = s.bore.diameter / 2;
  t.top = s.bore.top;
  t.depth = s.bore.depth;
  return t;
}

std::vector<double> marched(const assembly::Assembly& assembly) {
  simulation::Simulation simulation(assembly, 1);
  std::vector<double> rise;
  for (int hour = 0; hour < hours; ++hour) {
    const auto means = simulation.march_hour();
    rise.push_back((means.eft + means.lft) / 2 - undisturbed);
  }
  return rise;
}

validation::Plot picture(const std::string& name, const std::vector<double>& ours, const std::vector<double>& exact) {
  validation::Plot plot{"Response test, " + name, "hour", "mean fluid temperature, rise [K]", true, false, {}};
  validation::Curve theory{"exact theory", {}, true}, march{"march", {}, false};
  for (std::size_t hour = 1; hour < ours.size(); ++hour) {
    march.points.emplace_back(static_cast<double>(hour) + 0.5, ours[hour]);
    if (hour % 4 == 1) theory.points.emplace_back(static_cast<double>(hour) + 0.5, exact[hour]);
  }
  plot.curves = {theory, march};
  return plot;
}

/// Readings that are known to miss: exact theory, read the same way, misses as well.
const std::set<std::pair<std::string, std::string>> biased{
    {"conductivity", "clay"},  {"conductivity", "sandstone"}, {"conductivity", "gneiss"},
    {"conductivity", layered}, {"resistance", "clay"},        {"resistance", "sandstone"},
    {"resistance", "gneiss"},  {"resistance", layered},       {"fitted", layered}};

/// A reading against the truth; a known miss may be no worse than exact theory's and 0.3 %.
void judge(validation::Claim& claim, const std::string& what, const std::string& site, double known, double ours,
           double theory, double allowed) {
  if (!biased.contains({what, site})) return claim.relative(site, known, ours, allowed);
  const double bias = theory / known - 1;
  const std::string why = what == "fitted" ? "layers side by side answer otherwise than uniform ground of their mean"
                                           : "heat stored in the bore, bore radius, ends";
  claim.known_miss(
      site, known, ours, allowed, std::abs(bias) + 0.003,
      fmt::format("a bias of the reading, {}: exact theory, read the same way, is {:+.1f} % off", why, 100 * bias));
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string test =
      "a test of 72 hours at 60 W/m on invented sites: one U in a 120 m bore, water at 0.5 l/s, heat "
      "from the first hour, hourly means of (EFT + LFT)/2";
  const std::string theory =
      "Carslaw & Jaeger 1959 (cylinder), Claesson & Javed 2011 (ends), Stehfest 1970, Hellstrom 1991 "
      "(R_b*) [from memory]; validation/reference_solutions/bore_response.hpp";
  const std::string mogensen = "Mogensen 1983, line-source reading of a response test [from memory]";
  auto& curve = check.claim(
      {"trt-curve", "in a response test the fluid warms as exact theory says", validation::Origin::computed, theory,
       test +
           "; theory: fluid, grout node, wall and infinite ground about a cylinder in every layer, the layers side by "
           "side, less the effect of the ends; rise [K]",
       "0.3 % of the rise from the fourth hour on: the march's 0.1 % at a wall, its step, and theory's one temperature "
       "of "
       "the fluid with depth; before that a round trip counts"});
  auto& conductivity = check.claim(
      {"trt-conductivity", "the usual reading of a response test gives back the ground's conductivity",
       validation::Origin::memory, mogensen,
       test + "; slope against ln t by least squares from hour 10 to 72; in layers the mean over the bore's length",
       "1 %: what is asked of it; where exact theory, read the same way, misses as well, the miss is known"});
  auto& resistance = check.claim(
      {"trt-resistance", "the usual reading of a response test gives back R_b*", validation::Origin::memory, mogensen,
       test + "; R_b* by Hellstrom's closed form from R_b and R_a, the ground's heat capacity taken as known",
       "2 %: what is asked of it; where exact theory, read the same way, misses as well, the miss is known"});
  auto& same = check.claim({"trt-same-reading", "our response test reads like that of exact theory",
                            validation::Origin::computed, theory, test + "; both read in the usual way, hours 10 to 72",
                            "0.5 %: half of what a reading is asked for"});
  const std::string search =
      "; k and R_b* of a bore in uniform ground by least squares over hours 10 to 72, capacities "
      "taken as known; in layers against the mean over the bore's length";
  auto& fit_k = check.claim(
      {"trt-fit-conductivity", "fitting exact theory to our response test gives back the ground's conductivity",
       validation::Origin::computed, theory, test + search, "1 %: what is asked of the usual reading"});
  auto& fit_r =
      check.claim({"trt-fit-resistance", "fitting exact theory to our response test gives back R_b*",
                   validation::Origin::computed, theory, test + search, "2 %: what is asked of the usual reading"});
  for (const Site& one : sites()) {
    const assembly::Assembly assembly = assembly::assemble(one.scenario);
    const auto ours = marched(assembly);
    const Truth t = truth(assembly, undisturbed + ours[hours / 2]);
    const auto exact = exact_rise(t);
    for (const std::size_t hour : {3, 6, 12, 24, 48, 71}) {
      curve.relative(fmt::format("{}, hour {}", one.name, hour + 1), exact[hour], ours[hour], 0.003);
    }
    curve.plot(picture(one.name, ours, exact));
    const Reading our = validation::read_line_source(ours, first_hour, heat, t.capacity, t.radius);
    const Reading its = validation::read_line_source(exact, first_hour, heat, t.capacity, t.radius);
    judge(conductivity, "conductivity", one.name, t.conductivity, our.conductivity, its.conductivity, 0.01);
    judge(resistance, "resistance", one.name, t.resistance, our.resistance, its.resistance, 0.02);
    same.relative(one.name + ", k", its.conductivity, our.conductivity, 0.005);
    same.relative(one.name + ", R_b*", its.resistance, our.resistance, 0.005);
    const Reading best = fitted(ours, t), best_of_theory = fitted(exact, t);
    judge(fit_k, "fitted", one.name, t.conductivity, best.conductivity, best_of_theory.conductivity, 0.01);
    fit_r.relative(one.name, t.resistance, best.resistance, 0.02);
  }
  return check.finish();
}
