#include <cmath>
#include <numbers>
#include <variant>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/flow_regimes.hpp"
#include "engine/base/temperature.hpp"
#include "engine/bore/effective.hpp"
#include "engine/bore/multipole.hpp"
#include "engine/materials/film.hpp"
#include "engine/materials/fluid.hpp"
#include "validation/trade_practice/claims.hpp"

namespace stillground::validation {

namespace {

constexpr double gpm = 0.06309e-3;  // US gallon per minute [m3/s]

/// Resistances of the common loop with another grout, at 10 degC.
bore::LegResistances with_grout(double conductivity) {
  model::Scenario s = common_loop();
  s.bore.grout.solid.conductivity = conductivity;
  const auto fluid = assembly::loop_fluid(s, 1, 10 + zero_celsius);
  const auto modes =
      assembly::resistances(s, 2.3, assembly::pipe_flow(s, fluid.flow_per_bore, 10 + zero_celsius).films);
  return {modes.resistance[0], 2 * modes.resistance[1]};
}

/// R_b of two U of 1 in pipe in the same bore and grout, turbulent water: four legs on one circle.
double double_u(double grout) {
  const double leg = materials::pipe_wall_resistance(0.02733, 0.0334, 0.40) + 0.005;
  bore::BoreSection section{0.0762, grout, 2.3, {}};
  for (const double quarter : {0.0, 0.5, 1.0, 1.5}) {
    const auto z = std::polar(0.0375, quarter * std::numbers::pi);
    section.pipes.push_back({z.real(), z.imag(), 0.0167, leg});
  }
  return bore::solve_multipoles(section).resistance.sum() / 16;
}

struct Pipe {
  double inner_diameter = 0;  ///< [m]
  double roughness = 1.5e-6;  ///< [m]
};
constexpr Pipe three_quarters{0.02182}, one{0.02733}, one_and_a_quarter{0.0345};  // inch, DR-11: pipe_dimensions.csv

double reynolds(const Pipe& pipe, double flow, const model::Fluid& fluid, double celsius) {
  const auto state = materials::fluid_state(fluid, celsius + zero_celsius);
  return materials::reynolds(flow * state.density, pipe.inner_diameter, state.viscosity);
}

/// Head lost per hundred of length.
double head_per_hundred(const Pipe& pipe, double flow, const model::Fluid& fluid, double celsius) {
  const double d = pipe.inner_diameter, speed = flow / (std::numbers::pi * d * d / 4);
  const double f = materials::friction_factor(reynolds(pipe, flow, fluid, celsius), pipe.roughness / d);
  return 100 * f / d * speed * speed / (2 * 9.81);
}

}  // namespace

void judge_resistances(Check& check) {
  auto& claim = check.claim(
      {"practice-bore-resistance", "bores of common make have common resistances", Origin::practice,
       "a single U near 0.15 to 0.25 K m/W in plain bentonite, 0.07 to 0.13 in enhanced "
       "grout; "
       "two U a quarter to a half less; film when turbulent a small part; R_b* a few per cent above R_b at 120 m",
       "6 in bore, 1-1/4 in DR-11 U with legs 75 mm apart, ground 2.3 W/(m K), 6 gpm of 20 % propylene glycol at 10 "
       "degC; "
       "two U: of 1 in, legs on a circle of 75 mm",
       "the quoted bands"});
  const auto plain = with_grout(0.75), enhanced = with_grout(1.7);
  claim.between("R_b, bentonite of 0.75 W/(m K) [K m/W]", 0.15, 0.25, plain.bore);
  claim.between("R_b, enhanced grout of 1.7 W/(m K) [K m/W]", 0.07, 0.13, enhanced.bore);
  claim.between("R_a over R_b, enhanced grout", 2.5, 5, enhanced.internal / enhanced.bore);
  claim.between("two U over one U, enhanced grout", 0.5, 0.8, double_u(1.7) / enhanced.bore);
  const model::Scenario s = common_loop();
  const auto fluid = assembly::loop_fluid(s, 1, 10 + zero_celsius);
  const double film = assembly::pipe_flow(s, fluid.flow_per_bore, 10 + zero_celsius).films[0];
  claim.between("film's half over R_b, enhanced grout", 0.01, 0.1, film / 2 / enhanced.bore);
  const double effective = bore::effective_resistance_uniform_wall({enhanced.bore, enhanced.internal}, s.bore.depth,
                                                                   fluid.flow_per_bore, fluid.heat_capacity);
  claim.between("R_b* over R_b, enhanced grout", 1.01, 1.15, effective / enhanced.bore);
}

void judge_flow(Check& check) {
  auto& claim = check.claim({"practice-flow",
                             "at common flow loops are turbulent when warm and lose a few feet of head per hundred",
                             Origin::practice,
                             "turbulent flow in the loop at design, Re above 2500; 1 to 4 "
                             "ft of head per 100 ft; 3/4 "
                             "in pipe for 3 gpm, 1 in to 5, 1-1/4 in to 9",
                             "DR-11 pipes, water at 10 degC, 20 % propylene glycol at 20 and 0 degC",
                             "the quoted bands; the last row the other way round: glycol near freezing is known to "
                             "fall out of turbulent flow"});
  const model::Fluid water, glycol{model::Antifreeze::propylene_glycol, 0.2, model::Fluid::Basis::mass};
  claim.between("Re, 3/4 in, 3 gpm, water", 4000, 20000, reynolds(three_quarters, 3 * gpm, water, 10));
  claim.between("Re, 1-1/4 in, 6 gpm, water", 4000, 20000, reynolds(one_and_a_quarter, 6 * gpm, water, 10));
  claim.between("Re, 1-1/4 in, 6 gpm, glycol at 20 degC", 4000, 20000,
                reynolds(one_and_a_quarter, 6 * gpm, glycol, 20));
  claim.between("head per 100, 3/4 in, 3 gpm, water", 1, 4, head_per_hundred(three_quarters, 3 * gpm, water, 10));
  claim.between("head per 100, 1 in, 5 gpm, water", 1, 4, head_per_hundred(one, 5 * gpm, water, 10));
  claim.between("head per 100, 1-1/4 in, 9 gpm, water", 1, 4, head_per_hundred(one_and_a_quarter, 9 * gpm, water, 10));
  claim.between("Re, 1-1/4 in, 3 gpm, glycol at 0 degC", 500, 2500, reynolds(one_and_a_quarter, 3 * gpm, glycol, 0));
}

}  // namespace stillground::validation
