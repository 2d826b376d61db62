#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "validation/harness/worst_case.hpp"
#include "validation/loop_types/claims.hpp"
#include "validation/loop_types/table.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

void judge_double_u_modes(Check& check) {
  auto& claim = check.claim(
      {"double-u-modes", "a double U's network has the resistances of the legs' modes", Origin::computed,
       "Claesson & Hellstrom 2011, HVAC&R Research 17(6), solved apart from the engine: R_11, R_12 (beside), R_13 "
       "(opposite) of tests/reference/bore_resistance_double.csv; legs at one temperature, round the square at +, -, "
       "+, - (alternate) and +, 0, -, 0 (opposite) by their definition",
       "R_b, R_11 - 2 R_12 + R_13, R_11 - R_13 [K m/W] of the network that the engine makes of 16 sections, pipe wall "
       "and film half of a leg each; in series and in parallel, U's own legs side by side and opposite (crossed); the "
       "section with the largest miss",
       "1e-6: the table's order 10 is within 6e-9 of the converged values that the engine uses, its digits 12"});
  for (const std::string loop : {"series", "series crossed", "parallel", "parallel crossed"}) {
    WorstCase even, alternate, opposite;
    for (TableRow row : reference_solutions::reference_table("bore_resistance_double.csv")) {
      row["loop"] = loop;
      const bore::Network made = network(row);
      const double r11 = number(row, "R11"), r12 = number(row, "R12"), r13 = number(row, "R13");
      const std::string where = fmt::format("pipes on a circle of {:g} mm, grout {}, ground {}",
                                            1e3 * number(row, "pipe_circle"), row.at("k_grout"), row.at("k_ground"));
      even.compare(where, (r11 + 2 * r12 + r13) / 4, made.modes[0].resistance());
      if (made.passes == 2) {
        alternate.compare(where, r11 - 2 * r12 + r13, made.modes[1].resistance());
        opposite.compare(where, r11 - r13, made.modes[2].resistance());
        opposite.compare(where, r11 - r13, made.modes[3].resistance());
      } else if (loop == "parallel") {
        alternate.compare(where, (r11 - 2 * r12 + r13) / 2, made.modes[1].resistance());
      } else {
        opposite.compare(where, (r11 - r13) / 2, made.modes[1].resistance());
      }
    }
    even.row(claim, fmt::format("R_b, {}", loop), 1e-6);
    if (loop != "parallel crossed") alternate.row(claim, fmt::format("alternate, {}", loop), 1e-6);
    if (loop != "parallel") opposite.row(claim, fmt::format("opposite, {}", loop), 1e-6);
  }
}

double ring(double outer, double inner, double conductivity) {
  return std::log(outer / inner) / (2 * std::numbers::pi * conductivity);
}

void judge_coaxial_rings(Check& check) {
  auto& claim = check.claim(
      {"coaxial-rings", "a coaxial loop's resistances are those of its rings and films one after the other",
       Origin::computed, "ln(r_o/r_i)/(2 pi k) of a ring (Carslaw & Jaeger 1959, ch. VII), films as given",
       "annulus to bore wall and inner stream to annulus [K m/W] of three invented bores (plastic, steel outer pipe, "
       "insulated inner pipe), both directions of flow",
       "1e-12: the same sums of logarithms"});
  for (const std::string loop : {"coaxial annulus down", "coaxial inner down"}) {
    WorstCase wall, inner;
    for (const TableRow& row : streams_table("wall", loop)) {
      const bore::Network made = network(row);
      const double to_wall = number(row, "film_outer") +
                             ring(number(row, "r_outer_o"), number(row, "r_outer_i"), number(row, "k_outer")) +
                             ring(number(row, "r_bore"), number(row, "r_outer_o"), number(row, "k_grout"));
      const double within = number(row, "film_inner") + number(row, "film_pipe") +
                            ring(number(row, "r_inner_o"), number(row, "r_inner_i"), number(row, "k_inner"));
      wall.compare(row.at("section"), to_wall, made.modes[0].resistance());
      inner.compare(row.at("section"), within, made.modes[1].resistance());
    }
    wall.row(claim, loop + ", annulus to wall", 1e-12);
    inner.row(claim, loop + ", inner stream to annulus", 1e-12);
  }
}

}  // namespace

void judge_resistances(Check& check) {
  judge_double_u_modes(check);
  judge_coaxial_rings(check);
}

}  // namespace stillground::validation
