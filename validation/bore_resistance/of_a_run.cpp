#include <fmt/format.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/flow_regimes.hpp"
#include "validation/bore_resistance/claims.hpp"
#include "validation/bore_resistance/sections.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

using std::numbers::pi;

constexpr double temperature = 293.15;  // a row of water_properties.csv

TableRow water_at_20() {
  for (const TableRow& row : reference_solutions::reference_table("water_properties.csv")) {
    if (number(row, "temperature") == 20) return row;
  }
  throw std::runtime_error("water_properties.csv has no row at 20 degC");
}

/// The film's resistance [K m/W] by hand: Re, Petukhov's friction, Gnielinski's Nusselt number; laminar 48/11.
double film_by_hand(double volume_flow, double inner_diameter) {
  const TableRow water = water_at_20();
  const double re = 4 * volume_flow * number(water, "density") / (pi * inner_diameter * number(water, "viscosity"));
  const double pr = number(water, "prandtl");
  const double f = std::pow(0.790 * std::log(re) - 1.64, -2);
  const double turbulent = f / 8 * (re - 1000) * pr / (1 + 12.7 * std::sqrt(f / 8) * (std::pow(pr, 2.0 / 3) - 1));
  return 1 / (pi * (re > 4000 ? turbulent : 48.0 / 11) * number(water, "conductivity"));
}

/// A bore with the row's section in the row's ground, water at 20 degC; the pipe's conductivity is what makes film and
/// wall together the row's leg.
model::Scenario scenario(const TableRow& row, double volume_flow) {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {number(row, "k_ground"), 2e6}}};
  s.ground.undisturbed = model::MeanOverBore{temperature};
  s.bore.top = 1;
  s.bore.depth = 100;
  s.bore.diameter = 2 * number(row, "r_bore");
  s.bore.loop = model::SingleU{number(row, "spacing")};
  const double outer = 2 * number(row, "r_pipe"), wall = 0.1 * outer;
  const double of_wall = number(row, "R_pipe") - film_by_hand(volume_flow, outer - 2 * wall);
  s.bore.pipe = {"", outer, wall, std::log(outer / (outer - 2 * wall)) / (2 * pi * of_wall), 2e6, 0};
  s.bore.grout = {"", {number(row, "k_grout"), 3e6}};
  s.layout = model::Grid{1, 1, 6};
  s.flow = {volume_flow, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{1000};
  s.run.years = 1;
  return s;
}

}  // namespace

void judge_run(Check& check) {
  auto& claim = check.claim(
      {"resistances-of-a-run", "a run marches with the R_b and R_a of its pipe, fluid and flow", Origin::computed,
       "film by hand: IAPWS SR6-08(2011), Petukhov 1970 and Gnielinski 1976, or 48/11 in laminar flow; section by "
       "boundary integral equations; tests/reference/water_properties.csv, bore_resistance.csv",
       "resistances [K m/W] of the network that a scenario marches with, water at 20 degC; the pipe's conductivity is "
       "set so that film by hand and wall add up to the leg of the reference's section; 0.4 L/s turbulent over every "
       "section, 0.03 L/s laminar where the leg exceeds its film",
       "1e-4: a run interpolates between whole kelvins (about 1e-6) and writes 48/11 with four digits; a hundredth of "
       "what would matter"});
  for (const double flow : {0.4e-3, 0.03e-3}) {
    WorstCase rb, ra;
    for (const TableRow& row : reference_solutions::reference_table("bore_resistance.csv")) {
      if (flow < 1e-4 && number(row, "R_pipe") < 0.13) continue;
      const model::Scenario s = scenario(row, flow);
      const assembly::Assembly assembly = assembly::assemble(s);
      assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid);
      const bore::Network network = regimes.flowing(temperature).march.networks.back();
      rb.compare(describe(row), number(row, "Rb_boundary"), network.modes[0].resistance());
      ra.compare(describe(row), number(row, "Ra_boundary"), 2 * network.modes[1].resistance());
    }
    rb.row(claim, fmt::format("R_b, {:g} L/s", 1e3 * flow), 1e-4);
    ra.row(claim, fmt::format("R_a, {:g} L/s", 1e3 * flow), 1e-4);
  }
}

}  // namespace stillground::validation
