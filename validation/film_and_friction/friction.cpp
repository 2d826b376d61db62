#include <fmt/format.h>

#include "engine/materials/film.hpp"
#include "validation/film_and_friction/claims.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

using materials::friction_factor;

void judge_formulas(Check& check) {
  auto& claim = check.claim(
      {"friction-factor", "friction is 64/Re in laminar flow and Colebrook's from Re 4000", Origin::computed,
       "Hagen-Poiseuille; Colebrook 1939, solved exactly through Lambert's function in 30 digits; "
       "tests/reference/film_and_friction.csv",
       "Darcy factor at Re 500 to 1e5, relative roughness 0, 5e-5, 1e-3; the worst roughness of each Re",
       "1e-9: the same formula"});
  std::map<double, WorstCase> by_reynolds;
  std::map<double, Curve> points;
  for (const TableRow& row : reference_solutions::reference_table("film_and_friction.csv")) {
    const double re = number(row, "Re"), roughness = number(row, "relative_roughness");
    if (number(row, "Pr") != 7 || (re > 2300 && re < 4000)) continue;  // friction is the same at every Pr
    const double f = number(row, re < 4000 ? "f_laminar" : "f_colebrook");
    by_reynolds[re].compare(fmt::format("roughness {:g}", roughness), f, friction_factor(re, roughness));
    points[roughness].points.emplace_back(re, f);
  }
  for (const auto& [re, worst] : by_reynolds) worst.row(claim, fmt::format("Re {:g}", re), 1e-9);
  Plot plot{"Darcy friction factor", "Re [-]", "f [-]", true, true, {}};
  for (auto& [roughness, curve] : points) {
    curve.label = fmt::format("exact, roughness {:g}", roughness);
    curve.is_reference = true;
    plot.curves.push_back(curve);
    plot.curves.push_back(drawn(fmt::format("ours, roughness {:g}", roughness),
                                [e = roughness](double re) { return friction_factor(re, e); }));
  }
  claim.plot(plot);
}

void judge_transition(Check& check) {
  auto& claim = check.claim(
      {"friction-transition", "between laminar and turbulent flow friction neither jumps nor falls", Origin::engine,
       "our friction on either side of each end; the rule, on which nobody agrees: linear in Re from 64/2300 to "
       "Colebrook's value at Re 4000, as the film",
       "f on either side of both ends (Re 1e-9 apart) and its least rise from one whole Re to the next",
       "1e-6 of a jump; any rise above 0"});
  for (const double roughness : {0.0, 1e-3}) {
    const auto f = [roughness](double re) { return friction_factor(re, roughness); };
    claim.relative(fmt::format("from below to above Re 2300, roughness {:g}", roughness), f(2300 * (1 - 1e-9)),
                   f(2300 * (1 + 1e-9)), 1e-6);
    claim.relative(fmt::format("from below to above Re 4000, roughness {:g}", roughness), f(4000 * (1 - 1e-9)),
                   f(4000 * (1 + 1e-9)), 1e-6);
    claim.between(fmt::format("least rise per unit of Re, roughness {:g}", roughness), 1e-9, 1e-3, least_rise(f));
  }
}

void judge_other_authors(Check& check) {
  auto& claim =
      check.claim({"friction-other-authors",
                   "turbulent friction agrees with other authors' formulas within their accuracy", Origin::computed,
                   "Serghides 1984, Chem. Eng. 91; Haaland 1983, J. Fluids Eng. 105 "
                   "(tests/reference/film_and_friction.csv); Blasius "
                   "1913, 0.316 Re^-0.25, smooth to Re 2e4, and Petukhov 1970, smooth (both from memory)",
                   "Re 4000 to 1e5 at the roughness that each formula covers; the worst of all",
                   "1e-4, where Serghides is 3e-5 off Colebrook by the reference's own account; 2 % of Haaland, by the "
                   "same; 5 % of "
                   "the two smooth fits, as commonly stated"});
  WorstCase serghides, haaland, blasius, petukhov;
  for (const TableRow& row : reference_solutions::reference_table("film_and_friction.csv")) {
    const double re = number(row, "Re"), roughness = number(row, "relative_roughness");
    if (re < 4000 || number(row, "Pr") != 7) continue;
    const std::string where = fmt::format("Re {:g}, roughness {:g}", re, roughness);
    const double ours = friction_factor(re, roughness);
    serghides.compare(where, number(row, "f_serghides"), ours);
    haaland.compare(where, number(row, "f_haaland"), ours);
    if (roughness > 0) continue;
    if (re <= 2e4) blasius.compare(where, 0.316 * std::pow(re, -0.25), ours);
    petukhov.compare(where, number(row, "f_petukhov_smooth"), ours);
  }
  serghides.row(claim, "Serghides", 1e-4);
  haaland.row(claim, "Haaland", 0.02);
  blasius.row(claim, "Blasius", 0.05);
  petukhov.row(claim, "Petukhov", 0.05);
}

}  // namespace

void judge_friction(Check& check) {
  judge_formulas(check);
  judge_transition(check);
  judge_other_authors(check);
}

}  // namespace stillground::validation
