#include "engine/bore/multipole.hpp"
#include "validation/bore_resistance/claims.hpp"
#include "validation/bore_resistance/sections.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

void judge_double_u(Check& check) {
  auto& claim = check.claim(
      {"double-u-matrix", "four pipes have the multipole method's R_b and resistance matrix", Origin::computed,
       "Claesson & Hellstrom 2011, HVAC&R Research 17(6), solved apart from the engine; boundary integral equations of "
       "400 points a circle; tests/reference/bore_resistance_double.csv",
       "R_b, R_11, R_12 (next to each other), R_13 (opposite) [K m/W] of 16 sections; for each quantity the section "
       "with the largest miss",
       "1e-9 at order 10 and 1e-6 converged, as the reference's README asks"});
  WorstCase rb, r11, r12, r13, converged;
  for (const TableRow& row : reference_solutions::reference_table("bore_resistance_double.csv")) {
    const Eigen::MatrixXd r = bore::solve_multipoles(double_u(row), 10).resistance;
    rb.compare(describe(row), number(row, "Rb_order10"), r.sum() / 16);
    r11.compare(describe(row), number(row, "R11"), r(0, 0));
    r12.compare(describe(row), number(row, "R12"), r(0, 1));
    r13.compare(describe(row), number(row, "R13"), r(0, 2));
    converged.compare(describe(row), number(row, "Rb_boundary"),
                      bore::solve_multipoles(double_u(row)).resistance.sum() / 16);
  }
  rb.row(claim, "R_b, order 10", 1e-9);
  r11.row(claim, "R_11, order 10", 1e-9);
  r12.row(claim, "R_12, order 10", 1e-9);
  r13.row(claim, "R_13, order 10", 1e-9);
  converged.row(claim, "R_b, converged, boundary integral", 1e-6);
}

}  // namespace stillground::validation
