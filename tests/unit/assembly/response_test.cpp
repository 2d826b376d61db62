#include "engine/assembly/response_test.hpp"

#include <cmath>
#include <limits>

#include "engine/bore/effective.hpp"
#include "engine/job/warnings.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

using Connection = model::DoubleU::Connection;
using Down = model::Coaxial::Down;

struct Made {
  std::string name;
  model::Scenario scenario;
};

/// One bore in uniform ground, water always on at 20 degC or so; invented.
Made made(const std::string& name, const model::Loop& loop, const model::Pipe& pipe, double depth, double flow) {
  auto s = test::scenario(1, 1);
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "sandstone", {2.4, 2.2e6}}};
  s.ground.undisturbed = model::MeanOverBore{284.15};
  s.bore.loop = loop;
  s.bore.pipe = pipe;
  s.bore.depth = depth;
  s.fluid = {};
  s.flow = {flow, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{20 * depth};
  return {name, s};
}

std::vector<Made> bores() {
  const model::Pipe leg{"", 0.04, 0.0037, 0.42, 1.9e6, 0}, thin{"", 0.032, 0.0029, 0.42, 1.9e6, 0};
  const model::Pipe casing{"", 0.11, 0.0066, 0.42, 1.9e6, 0}, inner{"", 0.063, 0.0058, 0.42, 1.9e6, 0};
  const model::SingleU u{0.08};
  return {made("one U, 120 m", u, leg, 120, 0.35e-3),
          made("one U, 250 m, slow", u, leg, 250, 0.12e-3),
          made("two U's side by side", model::DoubleU{0.09, Connection::parallel, false}, thin, 120, 0.4e-3),
          made("U after U", model::DoubleU{0.09, Connection::series, false}, thin, 120, 0.3e-3),
          made("U after U, crossed", model::DoubleU{0.09, Connection::series, true}, thin, 120, 0.3e-3),
          made("annulus down", model::Coaxial{inner, Down::annulus}, casing, 150, 0.5e-3),
          made("inner pipe down", model::Coaxial{inner, Down::inner}, casing, 150, 0.5e-3)};
}

/// R_b and R_b* of the bore as it is marched, at the ground's temperature and the scenario's flow and depth.
struct Resistances {
  double local = 0, effective = 0;
};

Resistances marched(const model::Scenario& s) {
  const assembly::Assembly assembly = assembly::assemble(s);
  const double flow = assembly.fluid.flow_per_bore;
  const model::Solid ground = assembly::mean_solid(assembly.problem);
  const auto films = assembly::pipe_flow(s, flow, assembly.fluid.reference).films;
  const auto modes = assembly::with_measured(assembly::resistances(s, ground.conductivity, films), assembly.fluid);
  return {modes.resistance[0], assembly::effective_resistance(s, assembly.fluid, {ground, s.bore.depth, flow}, modes)};
}

model::Scenario measured(model::Scenario s, const model::MeasuredResistance& resistance) {
  s.bore.resistance = resistance;
  return s;
}

std::string warning_of(const model::Scenario& s) {
  for (const Warning& warning : job::warnings_before(assembly::assemble(s))) {
    if (warning.text.find("measured bore resistance") != std::string::npos) return warning.text;
  }
  return "";
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("A bore has the R_b* that a response test gave it: what the legs give each other is not counted twice") {
  for (const Made& bore : bores()) {
    CAPTURE(bore.name);
    const Resistances computed = marched(bore.scenario);
    CHECK(computed.effective > 1.005 * computed.local);
    const Resistances same = marched(measured(bore.scenario, {computed.effective, {}, {}}));
    CHECK(same.effective == Approx(computed.effective).epsilon(1e-9));
    CHECK(same.local == Approx(computed.local).epsilon(1e-6));
    const Resistances more = marched(measured(bore.scenario, {1.2 * computed.effective, {}, {}}));
    CHECK(more.effective == Approx(1.2 * computed.effective).epsilon(1e-9));
    CHECK(more.local > computed.local);
  }
}

TEST_CASE("A test at another flow and over another length leaves the local resistance of that bore") {
  const auto [name, scenario] = bores().front();
  auto tested = scenario;
  tested.flow.rate = 0.15e-3;
  tested.bore.depth = 200;
  const double entered = marched(tested).effective;
  const auto s = measured(scenario, {entered, 0.15e-3, 200});
  // R_b of the slower flow: its thicker film has gone into what was measured.
  CHECK(marched(s).local == Approx(marched(tested).local).epsilon(1e-6));
  CHECK(marched(s).effective < 0.9 * entered);
  CHECK(has(warning_of(s), "at 0.15 L/s over 200 m, leaves a local one of"));
}

TEST_CASE("The local resistance follows in every layer of the ground and in every film, and in standing fluid") {
  auto s = bores().front().scenario;
  s.ground.layers.insert(s.ground.layers.begin(), {30, "clay", {1.2, 2.6e6}});
  s.bore.resistance = model::MeasuredResistance{0.12, {}, {}};
  const assembly::Assembly assembly = assembly::assemble(s);
  REQUIRE(assembly.fluid.bore_resistance.has_value());
  assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid);
  for (const march::FlowRegime* regime : {&regimes.standing().march, &regimes.flowing(275).march}) {
    REQUIRE(regime->networks.size() == 2);
    for (const bore::Network& network : regime->networks) {
      CHECK(network.modes[0].resistance() == Approx(*assembly.fluid.bore_resistance).epsilon(1e-12));
    }
  }
}

TEST_CASE(
    "Where the legs' exchange alone makes more than was measured the computed resistance is kept, with a warning") {
  const Made slow = bores()[1];
  const Resistances computed = marched(slow.scenario);
  const auto s = measured(slow.scenario, {0.08, {}, {}});
  const auto test = assembly::assemble(s).response_test;
  REQUIRE(test.has_value());
  CHECK_FALSE(test->local.has_value());
  CHECK(test->least > 0.08);
  CHECK(marched(s).local == computed.local);
  CHECK(has(warning_of(s), "cannot be"));
  CHECK(has(warning_of(s), "0.12 L/s over 250 m"));
  // A shade above the least there is one.
  CHECK(assembly::assemble(measured(slow.scenario, {1.001 * test->least, {}, {}})).response_test->local.has_value());
  CHECK_FALSE(
      assembly::assemble(measured(slow.scenario, {0.999 * test->least, {}, {}})).response_test->local.has_value());
}

// Closed forms of one U: Hellstrom (1991) [from memory], as in unit_bore.
TEST_CASE("A test's R_b* lies between that of one wall temperature and that of one heat along the bore") {
  const auto s = bores()[1].scenario;
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto& fluid = assembly.fluid;
  const auto modes = assembly::resistances(s, 2.4, assembly::pipe_flow(s, fluid.flow_per_bore, fluid.reference).films);
  const bore::LegResistances legs{modes.resistance[0], 2 * modes.resistance[1]};
  const double wall = bore::effective_resistance_uniform_wall(legs, 250, fluid.flow_per_bore, fluid.heat_capacity);
  const double flux = bore::effective_resistance_uniform_flux(legs, 250, fluid.flow_per_bore, fluid.heat_capacity);
  const auto of = [&](const model::Solid& ground) {
    return assembly::effective_resistance(s, fluid, {ground, 250, fluid.flow_per_bore}, modes);
  };
  CHECK(of({2.4, 2.2e6}) > 1.05 * wall);
  CHECK(of({2.4, 2.2e6}) < 0.95 * flux);
  CHECK(of({1e6, 2.2e6}) == Approx(wall).epsilon(1e-4));
  CHECK(of({0.01, 1}) == Approx(flux).epsilon(1e-3));  // 110 K m/W of ground
}

TEST_CASE("Without a measured resistance there is no response test, and nothing is said of one") {
  const auto s = bores().front().scenario;
  CHECK_FALSE(assembly::assemble(s).response_test.has_value());
  CHECK(warning_of(s).empty());
}
