// Source: calorimetry: heat over what the volumes store; water by IAPWS SR6-08(2011)
#include <fmt/format.h>

#include <limits>
#include <numbers>
#include <stdexcept>

#include "engine/assembly/assembly.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/fixed_flow_march.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

constexpr double depth = 100, heat = 2000;  // [m], [W]
constexpr double temperature = 283.15;      // at which the flow and its capacity are taken [K]

double disc(double diameter) {
  return std::numbers::pi * diameter * diameter / 4;
}

/// rho c of water [J/(m3 K)] at `temperature`, as published.
double water() {
  for (const auto& row : reference_solutions::read_table(REFERENCE_FOLDER "/water_properties.csv")) {
    if (std::stod(row.at("temperature")) == temperature - 273.15)
      return std::stod(row.at("density")) * std::stod(row.at("heat_capacity"));
  }
  throw std::runtime_error("no water at 10 degC in the reference's table");
}

/// What a bore is made of per metre: volumes by the diameters alone [m2].
struct Contents {
  double fluid = 0;
  double pipe = 0;
  double grout = 0;
};

Contents contents(const model::Bore& bore) {
  const double legs = std::holds_alternative<model::SingleU>(bore.loop)   ? 2
                      : std::holds_alternative<model::DoubleU>(bore.loop) ? 4
                                                                          : 1;
  const double outside = bore.pipe.outer_diameter, inside = outside - 2 * bore.pipe.wall;
  Contents all{legs * disc(inside), legs * (disc(outside) - disc(inside)), disc(bore.diameter) - legs * disc(outside)};
  if (const auto* coaxial = std::get_if<model::Coaxial>(&bore.loop)) {
    const double wall =
        disc(coaxial->inner.outer_diameter) - disc(coaxial->inner.outer_diameter - 2 * coaxial->inner.wall);
    all.fluid -= wall;
    all.pipe += wall;
  }
  return all;
}

/// A bore of water in ground that takes no heat: it conducts 1e-9 W/(m K).
model::Scenario insulated(const model::Loop& loop, const model::Pipe& pipe) {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "insulator", {1e-9, 2e6}}};
  s.ground.undisturbed = model::MeanOverBore{temperature};
  s.bore.top = 2;
  s.bore.depth = depth;
  s.bore.diameter = 0.15;
  s.bore.loop = loop;
  s.bore.pipe = pipe;
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Grid{1, 1, 6};
  s.flow = {0.5e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{heat};
  s.run.years = 1;
  return s;
}

/// Rise of the mean fluid in a day [K], from the second day to the third, when all of the bore warms alike.
double daily_rise(const model::Scenario& s) {
  const assembly::Assembly assembly = assembly::assemble(s);
  assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid);
  const march::FlowRegime& regime = regimes.flowing(temperature).march;
  validation::FixedFlowMarch march(assembly.problem, {});
  double at[3] = {};
  for (int hour = 0; hour < 72; ++hour) {
    const auto mean = march.hour(heat, regime);
    at[hour / 24] = (mean.eft + mean.lft) / 2;
  }
  return at[2] - at[1];
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  auto& claim = check.claim(
      {"bore-contents", "a bore that loses no heat warms as fast as fluid, pipes and grout of its volumes must",
       validation::Origin::computed,
       "calorimetry: heat over the sum of volumes times heat capacities; rho c of water by IAPWS SR6-08(2011), "
       "tests/reference/water_properties.csv",
       "rise [K] of the mean fluid within the third day of 20 W/m, ground of 1e-9 W/(m K); volumes by the diameters; "
       "bore of 150 mm, grout 3.0, pipes 1.9 MJ/(m3 K); the network and the capacities of a run, at a fixed flow",
       "1e-5: the table's eight digits, and the last of the start, which decays within hours; 2 % of a pipe's wall is "
       "6e-4 of the sum, 2 % of the fluid 3e-3"});
  const model::Pipe common{"", 0.0422, 0.00383, 0.42, 1.9e6, 0}, thick{"", 0.05, 0.0069, 0.42, 1.9e6, 0},
      slim{"", 0.032, 0.0029, 0.42, 1.9e6, 0}, casing{"", 0.11, 0.0066, 0.42, 1.9e6, 0};
  using Connection = model::DoubleU::Connection;
  using Down = model::Coaxial::Down;
  const std::pair<const char*, model::Scenario> bores[] = {
      {"single U", insulated(model::SingleU{0.08}, common)},
      {"single U, thick pipe", insulated(model::SingleU{0.08}, thick)},
      {"double U in parallel", insulated(model::DoubleU{0.08, Connection::parallel, false}, slim)},
      {"double U in series", insulated(model::DoubleU{0.08, Connection::series, false}, slim)},
      {"coaxial, down the annulus", insulated(model::Coaxial{thick, Down::annulus}, casing)},
      {"coaxial, down the inner pipe", insulated(model::Coaxial{thick, Down::inner}, casing)}};
  for (const auto& [name, s] : bores) {
    const Contents c = contents(s.bore);
    const double stored = c.fluid * water() + c.pipe * s.bore.pipe.heat_capacity + c.grout * 3.0e6;
    claim.relative(name, heat * 86400 / (stored * depth), daily_rise(s), 1e-5);
  }
  return check.finish();
}
