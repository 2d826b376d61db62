#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "engine/bore/effective.hpp"
#include "engine/bore/multipole.hpp"
#include "validation/bore_resistance/claims.hpp"
#include "validation/bore_resistance/sections.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

/// Hellstrom (1991), first-order multipoles of two equal legs in closed form [from memory, in the notation of Javed &
/// Spitler 2016]: a = spacing/(2 r_b), b = r_p/spacing, beta = 2 pi k_b R_p.
bore::LegResistances first_order(const bore::BoreSection& section) {
  using std::numbers::pi;
  const auto& pipe = section.pipes.front();
  const double a = pipe.x / section.radius, b = pipe.outer_radius / (2 * pipe.x), sigma = section.contrast();
  const double beta = 2 * pi * section.grout_conductivity * pipe.resistance;
  const double a2 = a * a, a4 = a2 * a2, b2 = b * b, ratio = (1 + beta) / (1 - beta);

  const double even_line = std::log(section.radius / pipe.outer_radius / (2 * a * std::pow(1 - a4, sigma)));
  const double even_pole =
      b2 * std::pow(1 - 4 * sigma * a4 / (1 - a4), 2) / (ratio + b2 * (1 + 16 * sigma * a4 / std::pow(1 - a4, 2)));
  const double odd_line = std::log(std::pow((1 + a2) / (1 - a2), sigma) / b);
  const double odd_pole = b2 * std::pow(1 - a4 + 4 * sigma * a2, 2) /
                          (ratio * std::pow(1 - a4, 2) - b2 * std::pow(1 - a4, 2) + 8 * sigma * a2 * b2 * (1 + a4));
  return {(beta + even_line - even_pole) / (4 * pi * section.grout_conductivity),
          (beta + odd_line - odd_pole) / (pi * section.grout_conductivity)};
}

void judge_orders(Check& check) {
  auto& claim = check.claim(
      {"single-u-orders", "a single U has the multipole method's R_b and R_a at orders 0, 1 and 10", Origin::computed,
       "Claesson & Hellstrom 2011, HVAC&R Research 17(6), solved apart from the engine; "
       "tests/reference/bore_resistance.csv",
       "R_b and R_a [K m/W] of 54 sections: two bore radii, three spacings, grout 0.7 to 2.5, ground 1 to 3.5 W/(m K), "
       "legs of 0.02 to 0.15 K m/W; for each order the section with the largest miss",
       "1e-9, as the reference's README asks at order 10: small dense algebra, in which nothing is lost"});
  for (const int order : {0, 1, 10}) {
    WorstCase rb, ra;
    for (const TableRow& row : reference_solutions::reference_table("bore_resistance.csv")) {
      const auto legs = bore::leg_resistances(bore::solve_multipoles(single_u(row), order).resistance);
      rb.compare(describe(row), number(row, fmt::format("Rb_order{}", order)), legs.bore);
      ra.compare(describe(row), number(row, fmt::format("Ra_order{}", order)), legs.internal);
    }
    rb.row(claim, fmt::format("R_b, order {}", order), 1e-9);
    ra.row(claim, fmt::format("R_a, order {}", order), 1e-9);
  }
}

void judge_converged(Check& check) {
  auto& claim = check.claim(
      {"single-u-converged", "a single U has the R_b and R_a of a boundary integral solution", Origin::computed,
       "boundary integral equations on both pipes and the wall, 600 points a circle (another method, not another "
       "program); "
       "tests/reference/bore_resistance.csv",
       "the same 54 sections, the order raised as in a run until nothing changes by more than 1e-10; by spacing of the "
       "legs, the closest nearly touch",
       "1e-6, as the reference's README asks"});
  std::map<double, std::pair<WorstCase, WorstCase>> by_spacing;
  for (const TableRow& row : reference_solutions::reference_table("bore_resistance.csv")) {
    const auto legs = bore::leg_resistances(bore::solve_multipoles(single_u(row)).resistance);
    auto& [rb, ra] = by_spacing[number(row, "spacing")];
    rb.compare(describe(row), number(row, "Rb_boundary"), legs.bore);
    ra.compare(describe(row), number(row, "Ra_boundary"), legs.internal);
  }
  for (const auto& [spacing, worst] : by_spacing) {
    worst.first.row(claim, fmt::format("R_b, legs {:g} mm apart", 1e3 * spacing), 1e-6);
    worst.second.row(claim, fmt::format("R_a, legs {:g} mm apart", 1e3 * spacing), 1e-6);
  }
}

void judge_closed_forms(Check& check) {
  auto& claim = check.claim(
      {"single-u-closed-form", "at order 1 a single U has Hellstrom's closed forms", Origin::computed,
       "Hellstrom 1991, Ground heat storage (thesis, Lund), first-order multipoles; in the notation of Javed & Spitler "
       "2016; formulas from memory, written out beside this check",
       "R_b and R_a [K m/W] of the same 54 sections, our order 1 against the formulas",
       "1e-9: the same expansion, one solved as a linear system, the other by hand"});
  WorstCase rb, ra;
  for (const TableRow& row : reference_solutions::reference_table("bore_resistance.csv")) {
    const auto formula = first_order(single_u(row));
    const auto legs = bore::leg_resistances(bore::solve_multipoles(single_u(row), 1).resistance);
    rb.compare(describe(row), formula.bore, legs.bore);
    ra.compare(describe(row), formula.internal, legs.internal);
  }
  rb.row(claim, "R_b", 1e-9);
  ra.row(claim, "R_a", 1e-9);
}

}  // namespace

void judge_single_u(Check& check) {
  judge_orders(check);
  judge_converged(check);
  judge_closed_forms(check);
}

void judge_effective(Check& check) {
  auto& claim = check.claim(
      {"effective-resistance-formulas", "heat that passes between the legs raises R_b* as Hellstrom says",
       Origin::computed,
       "Hellstrom 1991, Ground heat storage; proved against a matrix exponential of the legs' balance; "
       "tests/reference/effective_resistance.csv",
       "R_b* [K m/W] = ((T_in + T_out)/2 - mean wall)/q' of 21 bores of 100 to 200 m at 0.2 to 0.35 kg/s, as `check` "
       "prints it",
       "1e-10, as the reference's README asks of the formula"});
  WorstCase flux, wall;
  for (const TableRow& row : reference_solutions::reference_table("effective_resistance.csv")) {
    const bore::LegResistances legs{number(row, "Rb"), number(row, "Ra")};
    const double length = number(row, "length"), flow = number(row, "mass_flow"), c = number(row, "heat_capacity");
    const std::string where =
        fmt::format("R_b {:.4f}, R_a {:.4f}, {:g} m, {:g} kg/s", legs.bore, legs.internal, length, flow);
    flux.compare(where, number(row, "Rb_eff_equal_flux"),
                 bore::effective_resistance_uniform_flux(legs, length, flow, c));
    wall.compare(where, number(row, "Rb_eff_equal_wall"),
                 bore::effective_resistance_uniform_wall(legs, length, flow, c));
  }
  flux.row(claim, "equal heat at every depth", 1e-10);
  wall.row(claim, "equal wall temperature", 1e-10);
}

}  // namespace stillground::validation
