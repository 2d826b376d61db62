#include <fmt/format.h>

#include "engine/materials/film.hpp"
#include "validation/film_and_friction/claims.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

using materials::nusselt;

const std::string table = "tests/reference/film_and_friction.csv";

void judge_formulas(Check& check) {
  auto& laminar =
      check.claim({"nusselt-laminar", "a laminar film has the Nusselt number of uniform heat flux", Origin::computed,
                   "48/11 from the energy equation with a parabolic profile (Incropera & DeWitt, from memory)",
                   "developed flow at Re 500 to 2300, Pr 7 to 40, which may not matter",
                   "1e-4: the engine writes the number with four digits"});
  for (const double re : {500.0, 1500.0, 2300.0}) {
    WorstCase worst;
    for (const double pr : {7.0, 12.0, 40.0}) worst.compare(fmt::format("Pr {}", pr), 48.0 / 11, nusselt(re, pr));
    worst.row(laminar, fmt::format("Re {:g}", re), 1e-4);
  }
  auto& turbulent = check.claim(
      {"nusselt-turbulent", "a turbulent film has Gnielinski's Nusselt number", Origin::computed,
       "Gnielinski 1976, Int. Chem. Eng. 16, with Petukhov's smooth friction (0.790 ln Re - 1.64)^-2, in 30 digits; " +
           table,
       "Re 4000 to 1e5, Pr 7, 12, 40 (water to cold glycol); the worst Pr of each Re", "1e-9: the same formula"});
  std::map<double, WorstCase> by_reynolds;
  Plot plot{"Nusselt number", "Re [-]", "Nu [-]", true, true, {}};
  std::map<double, Curve> points;
  for (const TableRow& row : reference_solutions::reference_table("film_and_friction.csv")) {
    const double re = number(row, "Re"), pr = number(row, "Pr");
    if (re < 4000) continue;
    by_reynolds[re].compare(fmt::format("Pr {}", pr), number(row, "Nu_gnielinski_petukhov"), nusselt(re, pr));
    if (number(row, "relative_roughness") == 0)
      points[pr].points.emplace_back(re, number(row, "Nu_gnielinski_petukhov"));
  }
  for (const auto& [re, worst] : by_reynolds) worst.row(turbulent, fmt::format("Re {:g}", re), 1e-9);
  for (auto& [pr, curve] : points) {
    curve.label = fmt::format("Gnielinski, Pr {}", pr);
    curve.is_reference = true;
    plot.curves.push_back(curve);
    plot.curves.push_back(drawn(fmt::format("ours, Pr {}", pr), [p = pr](double re) { return nusselt(re, p); }));
  }
  turbulent.plot(plot);
}

void judge_transition(Check& check) {
  auto& claim = check.claim(
      {"nusselt-transition", "between laminar and turbulent flow the film neither jumps nor falls", Origin::engine,
       "our film at both ends; the rule: Gnielinski 2013, Int. J. Heat Mass Transfer 63: linear in Re between "
       "2300 and 4000, from the laminar to the turbulent value; from memory",
       "Nu on either side of both ends (Re 1e-9 apart), least rise from one whole Re to the next, middle of the range",
       "1e-6 of a jump; any rise above 0; 1e-9 for the middle"});
  for (const double pr : {7.0, 40.0}) {
    const auto nu = [pr](double re) { return nusselt(re, pr); };
    claim.relative(fmt::format("from below to above Re 2300, Pr {}", pr), nu(2300 * (1 - 1e-9)), nu(2300 * (1 + 1e-9)),
                   1e-6);
    claim.relative(fmt::format("from below to above Re 4000, Pr {}", pr), nu(4000 * (1 - 1e-9)), nu(4000 * (1 + 1e-9)),
                   1e-6);
    claim.between(fmt::format("least rise per unit of Re, Pr {}", pr), 1e-6, 1, least_rise(nu));
    claim.relative(fmt::format("Re 3150, Pr {}: mean of both ends", pr), (nu(2300) + nu(4000)) / 2, nu(3150), 1e-9);
  }
  auto& older = check.claim({"nusselt-transition-older",
                             "at the lower edge of its range the film is near the older formula of the same author",
                             Origin::memory, "Gnielinski 1976, Int. Chem. Eng. 16; " + table, "Re 3000, Pr 7, 12, 40",
                             "10 %, the formula's stated accuracy, from memory"});
  for (const TableRow& row : reference_solutions::reference_table("film_and_friction.csv")) {
    if (number(row, "Re") != 3000 || number(row, "relative_roughness") != 0) continue;
    older.known_miss(
        fmt::format("Re 3000, Pr {}: Gnielinski 1976", row.at("Pr")), number(row, "Nu_gnielinski_petukhov"),
        nusselt(3000, number(row, "Pr")), 0.1, 0.4,
        "the author's later rule is followed, which does not jump at Re 2300; in the transition nobody's film "
        "is known better, and the lower value errs to the safe side");
  }
}

void judge_other_authors(Check& check) {
  auto& claim = check.claim(
      {"nusselt-other-authors", "turbulent films agree with other authors' correlations within their stated accuracy",
       Origin::memory,
       "Petukhov 1970 (f/8) Re Pr/(1.07 + 12.7 sqrt(f/8) (Pr^(2/3) - 1)); Dittus & Boelter 1930 0.023 Re^0.8 Pr^n, n = "
       "0.4 heating, 0.3 cooling the fluid; Sieder & Tate 1936 0.027 Re^0.8 Pr^(1/3); as in Incropera & DeWitt, from "
       "memory",
       "Re 1e4 (where the three begin) to 1e5; the worst Re of each Pr", "10 %, 25 % and 25 %, their stated accuracy"});
  const std::string power_law =
      "one power of Pr and Re for all fluids: the authors' own formulas for heating and cooling differ by Pr^0.1, 21 "
      "to "
      "45 %; Petukhov's, of another form, holds at every Pr";
  for (const double pr : {7.0, 12.0, 40.0}) {
    WorstCase petukhov, heating, cooling, sieder;
    for (const double re : {1e4, 2e4, 5e4, 1e5}) {
      const double f8 = std::pow(0.790 * std::log(re) - 1.64, -2) / 8;
      const std::string where = fmt::format("Re {:g}", re);
      petukhov.compare(where, f8 * re * pr / (1.07 + 12.7 * std::sqrt(f8) * (std::pow(pr, 2.0 / 3) - 1)),
                       nusselt(re, pr));
      heating.compare(where, 0.023 * std::pow(re, 0.8) * std::pow(pr, 0.4), nusselt(re, pr));
      cooling.compare(where, 0.023 * std::pow(re, 0.8) * std::pow(pr, 0.3), nusselt(re, pr));
      sieder.compare(where, 0.027 * std::pow(re, 0.8) * std::pow(pr, 1.0 / 3), nusselt(re, pr));
    }
    petukhov.row(claim, fmt::format("Petukhov, Pr {}", pr), 0.10);
    heating.row(claim, fmt::format("Dittus & Boelter heating, Pr {}", pr), 0.25);
    cooling.known_row(claim, fmt::format("Dittus & Boelter cooling, Pr {}", pr), 0.25, 0.8, power_law);
    if (pr < 40) {
      sieder.row(claim, fmt::format("Sieder & Tate, Pr {}", pr), 0.25);
    } else {
      sieder.known_row(claim, fmt::format("Sieder & Tate, Pr {}", pr), 0.25, 0.35, power_law);
    }
  }
}

}  // namespace

void judge_nusselt(Check& check) {
  judge_formulas(check);
  judge_transition(check);
  judge_other_authors(check);
}

}  // namespace stillground::validation
