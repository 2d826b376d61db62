#include <fmt/format.h>

#include <array>
#include <cmath>
#include <numbers>

#include "engine/materials/film.hpp"
#include "validation/film_and_friction/claims.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

using materials::annulus_nusselt;
using materials::AnnulusWall;

constexpr double laminar_re = 1200, water = 7;

void judge_laminar(Check& check) {
  auto& claim = check.claim(
      {"annulus-laminar", "a laminar film on either wall of an annulus has the Nusselt number of developed flow",
       Origin::library,
       "balances of momentum and energy integrated by scipy, and again by collocation within 5e-11: "
       "validation/reference_solutions/annulus.py and .csv",
       "hydraulic diameter, uniform flux, the other wall insulated; ratio of the radii as common in coaxial loops (0.3 "
       "to 0.8), beyond that the worst of 0.02 to 0.25 and of 0.9 to 0.99",
       "1e-6: the same balances, integrated by a rule of another kind"});
  Plot plot{"Laminar Nusselt number in an annulus", "inner over outer radius [-]", "Nu [-]", false, false, {}};
  WorstCase slim_inner, slim_outer, wide_inner, wide_outer;
  Curve reference_inner{"", {}, true}, reference_outer{"", {}, true};
  Curve inner{"inner wall", {}, false}, outer{"outer wall", {}, false};
  for (const TableRow& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/annulus.csv")) {
    const double ratio = number(row, "ratio");
    const double at_inner = annulus_nusselt(laminar_re, water, ratio, AnnulusWall::inner);
    const double at_outer = annulus_nusselt(laminar_re, water, ratio, AnnulusWall::outer);
    const std::string where = fmt::format("ratio {:g}", ratio);
    if (ratio >= 0.3 && ratio <= 0.8) {
      claim.relative(where + ", inner wall", number(row, "nusselt_inner"), at_inner, 1e-6);
      claim.relative(where + ", outer wall", number(row, "nusselt_outer"), at_outer, 1e-6);
    } else {
      (ratio < 0.5 ? slim_inner : wide_inner).compare(where, number(row, "nusselt_inner"), at_inner);
      (ratio < 0.5 ? slim_outer : wide_outer).compare(where, number(row, "nusselt_outer"), at_outer);
    }
    if (ratio < 0.15) continue;
    reference_inner.points.emplace_back(ratio, number(row, "nusselt_inner"));
    reference_outer.points.emplace_back(ratio, number(row, "nusselt_outer"));
    inner.points.emplace_back(ratio, at_inner);
    outer.points.emplace_back(ratio, at_outer);
  }
  slim_inner.row(claim, "thin inner pipe, inner wall", 1e-6);
  slim_outer.row(claim, "thin inner pipe, outer wall", 1e-6);
  wide_inner.row(claim, "narrow gap, inner wall", 1e-6);
  wide_outer.row(claim, "narrow gap, outer wall", 1e-6);
  plot.curves = {inner, outer, reference_inner, reference_outer};
  claim.plot(plot);
}

void judge_table(Check& check) {
  auto& claim = check.claim(
      {"annulus-table", "the printed Nusselt numbers of laminar flow in an annulus are met", Origin::memory,
       "Reynolds, Lundberg & McCuen 1963, Int. J. Heat Mass Transfer 6, as tabulated by Kays & Crawford, from memory; "
       "annulus-laminar derives them anew",
       "inner and outer wall, uniform flux, the other wall insulated", "0.1 %: three to four printed digits"});
  struct Printed {
    double ratio, inner, outer;
  };
  for (const auto& [ratio, inner, outer] : std::array<Printed, 6>{{{0.05, 17.81, 4.792},
                                                                   {0.1, 11.91, 4.834},
                                                                   {0.2, 8.499, 4.883},
                                                                   {0.4, 6.583, 4.979},
                                                                   {0.6, 5.912, 5.099},
                                                                   {0.8, 5.58, 5.24}}}) {
    claim.relative(fmt::format("ratio {:g}, inner wall", ratio), inner,
                   annulus_nusselt(laminar_re, water, ratio, AnnulusWall::inner), 1e-3);
    claim.relative(fmt::format("ratio {:g}, outer wall", ratio), outer,
                   annulus_nusselt(laminar_re, water, ratio, AnnulusWall::outer), 1e-3);
  }
}

/// Gnielinski's pipe value with Petukhov's friction, by hand.
double pipe_by_hand(double re, double pr) {
  const double f8 = std::pow(0.790 * std::log(re) - 1.64, -2) / 8;
  return f8 * (re - 1000) * pr / (1 + 12.7 * std::sqrt(f8) * (std::pow(pr, 2.0 / 3) - 1));
}

void judge_turbulent(Check& check) {
  auto& claim = check.claim(
      {"annulus-turbulent", "a turbulent film in an annulus is the pipe's times Petukhov & Roizen's factor",
       Origin::memory,
       "Gnielinski 1976 with Petukhov's friction; Petukhov & Roizen 1964: 0.86 a^-0.16 at the inner wall, 1 - 0.14 "
       "a^0.6 at the outer one, each with the other insulated; from memory",
       "Re 4000 to 1e5, Pr 7, 12, 40; the worst of each ratio a and wall", "1e-9: the same formula"});
  for (const double ratio : {0.3, 0.5, 0.7}) {
    WorstCase inner, outer;
    for (const double re : {4000.0, 1e4, 3e4, 1e5}) {
      for (const double pr : {7.0, 12.0, 40.0}) {
        const std::string where = fmt::format("Re {:g}, Pr {:g}", re, pr);
        inner.compare(where, 0.86 * std::pow(ratio, -0.16) * pipe_by_hand(re, pr),
                      annulus_nusselt(re, pr, ratio, AnnulusWall::inner));
        outer.compare(where, (1 - 0.14 * std::pow(ratio, 0.6)) * pipe_by_hand(re, pr),
                      annulus_nusselt(re, pr, ratio, AnnulusWall::outer));
      }
    }
    inner.row(claim, fmt::format("ratio {:g}, inner wall", ratio), 1e-9);
    outer.row(claim, fmt::format("ratio {:g}, outer wall", ratio), 1e-9);
  }
}

/// Gnielinski's later correlation for annuli, of a duct that is long against its gap.
double gnielinski_annulus(double re, double pr, double a, AnnulusWall wall) {
  const double star = re * ((1 + a * a) * std::log(a) + (1 - a * a)) / (std::pow(1 - a, 2) * std::log(a));
  const double f8 = std::pow(1.8 * std::log10(star) - 1.5, -2) / 8;
  const double k1 = 1.07 + 900 / re - 0.63 / (1 + 10 * pr);
  const double factor = wall == AnnulusWall::inner ? 0.75 * std::pow(a, -0.17) : 0.9 - 0.15 * std::pow(a, 0.6);
  return f8 * re * pr / (k1 + 12.7 * std::sqrt(f8) * (std::pow(pr, 2.0 / 3) - 1)) * factor;
}

void judge_later(Check& check) {
  auto& claim = check.claim(
      {"annulus-gnielinski", "a turbulent film in an annulus agrees with Gnielinski's later correlation for annuli",
       Origin::published,
       "Gnielinski 2009, Heat Transfer Eng. 30, 433-436 (0.75 a^-0.17; 0.9 - 0.15 a^0.6; friction of Re* = Re ((1 + "
       "a^2) ln a + 1 - a^2)/((1 - a)^2 ln a)); read as restated in a general-purpose library's documentation, not in "
       "the "
       "paper",
       "Re 1e4 (where it begins) to 1e5, Pr 7, 12, 40; the worst of each ratio and wall",
       "20 %, chosen beforehand: the scatter of the measurements that such correlations are fitted to (from memory)"});
  for (const double ratio : {0.3, 0.5, 0.7}) {
    for (const auto wall : {AnnulusWall::inner, AnnulusWall::outer}) {
      WorstCase worst;
      for (const double re : {1e4, 2e4, 5e4, 1e5}) {
        for (const double pr : {7.0, 12.0, 40.0}) {
          worst.compare(fmt::format("Re {:g}, Pr {:g}", re, pr), gnielinski_annulus(re, pr, ratio, wall),
                        annulus_nusselt(re, pr, ratio, wall));
        }
      }
      worst.row(claim, fmt::format("ratio {:g}, {} wall", ratio, wall == AnnulusWall::inner ? "inner" : "outer"), 0.2);
    }
  }
}

void judge_continuity(Check& check) {
  auto& claim = check.claim(
      {"annulus-transition", "between laminar and turbulent flow the films in an annulus neither jump nor fall",
       Origin::engine,
       "our film on either side of each end; the rule: linear in Re as in a pipe (Gnielinski 2013, from memory)",
       "Nu at either wall on either side of Re 2300 and 4000 (Re 1e-9 apart), least rise from one whole Re to the "
       "next; "
       "Pr 7; ratio 0.3, 0.5, 0.7",
       "1e-6 of a jump; any rise above 0"});
  for (const auto wall : {AnnulusWall::inner, AnnulusWall::outer}) {
    const char* name = wall == AnnulusWall::inner ? "inner" : "outer";
    WorstCase jump;
    double least = 1;
    for (const double ratio : {0.3, 0.5, 0.7}) {
      const auto nu = [&](double re) { return annulus_nusselt(re, water, ratio, wall); };
      for (const double end : {2300.0, 4000.0}) {
        jump.compare(fmt::format("Re {:g}, ratio {:g}", end, ratio), nu(end * (1 - 1e-9)), nu(end * (1 + 1e-9)));
      }
      least = std::min(least, least_rise(nu));
    }
    jump.row(claim, fmt::format("from below to above, {} wall", name), 1e-6);
    claim.between(fmt::format("least rise per unit of Re, {} wall", name), 1e-6, 1, least);
  }
}

void judge_resistance(Check& check) {
  auto& claim = check.claim({"annulus-film-resistance",
                             "a film's resistance in an annulus is 1/(pi d h), and Re goes by the hydraulic diameter",
                             Origin::computed, "definitions of h, Nu = h (d_o - d_i)/k and Re = v (d_o - d_i)/nu",
                             "water at 20 degC, 0.4 kg/s between 50 and 97 mm: velocity from the area, h from Nu 50",
                             "1e-12: the same algebra"});
  constexpr double inner = 0.05, outer = 0.097, k = 0.598, mu = 1.002e-3, rho = 998.2, flow = 0.4;
  const double area = std::numbers::pi / 4 * (outer * outer - inner * inner);
  claim.relative("Re", flow / (rho * area) * (outer - inner) * rho / mu,
                 materials::annulus_reynolds(flow, inner, outer, mu), 1e-12);
  const double h = 50 * k / (outer - inner);
  claim.relative("inner wall [K m/W]", 1 / (std::numbers::pi * inner * h),
                 materials::annulus_film_resistance(50, k, inner, outer, AnnulusWall::inner), 1e-12);
  claim.relative("outer wall [K m/W]", 1 / (std::numbers::pi * outer * h),
                 materials::annulus_film_resistance(50, k, inner, outer, AnnulusWall::outer), 1e-12);
}

}  // namespace

void judge_annulus(Check& check) {
  judge_laminar(check);
  judge_table(check);
  judge_turbulent(check);
  judge_later(check);
  judge_continuity(check);
  judge_resistance(check);
}

}  // namespace stillground::validation
