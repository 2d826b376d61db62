#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "engine/bore/multipole.hpp"
#include "engine/bore/section_field.hpp"
#include "validation/bore_resistance/claims.hpp"

namespace stillground::validation {

namespace {

using std::numbers::pi;

constexpr double bore_radius = 0.06, pipe_radius = 0.02, grout = 1.5, leg = 0.08;

void judge_annulus(Check& check) {
  auto& claim = check.claim(
      {"centred-pipe", "one pipe in the middle of its bore resists as the annulus of grout around it", Origin::computed,
       "steady conduction through a cylinder's wall, ln(r_b/r_p)/(2 pi k_b), in series with the pipe's own (Incropera "
       "& "
       "DeWitt, from memory)",
       "r_b 60 mm, r_p 20 mm, grout 1.5 W/(m K), pipe 0.08 K m/W; any order, ground of 0.5 or 4 W/(m K), which may not "
       "matter; the grout's mean temperature over the fluid's by integrating ln(r_b/r) over the annulus: "
       "(1/2 - r_p^2 ln(r_b/r_p)/(r_b^2 - r_p^2))/(ln(r_b/r_p) + 2 pi k_b R_p)",
       "1e-9 of the resistance, as of any multipole section; 1e-7 of the share, as its docstring promises"});
  const double log_ratio = std::log(bore_radius / pipe_radius);
  const double resistance = leg + log_ratio / (2 * pi * grout);
  const double squares = bore_radius * bore_radius - pipe_radius * pipe_radius;
  const double share = (0.5 - pipe_radius * pipe_radius * log_ratio / squares) / (log_ratio + 2 * pi * grout * leg);
  for (const double ground : {0.5, 4.0}) {
    for (const int order : {0, 10}) {
      const auto solved = bore::solve_multipoles({bore_radius, grout, ground, {{0, 0, pipe_radius, leg}}}, order);
      const std::string at = fmt::format("ground {} W/(m K), order {}", ground, order);
      claim.relative("R_b [K m/W], " + at, resistance, solved.resistance(0, 0), 1e-9);
      const auto field = bore::field_of(solved, Eigen::VectorXd::Ones(1));
      claim.relative("mean of the grout over the fluid, " + at, share,
                     bore::mean_grout_temperature(field) / solved.resistance(0, 0), 1e-7);
    }
  }
}

void judge_off_centre(Check& check) {
  auto& claim = check.claim(
      {"off-centre-pipe", "a pipe anywhere in a bore whose wall has one temperature resists as eccentric cylinders do",
       Origin::computed,
       "conduction shape factor of eccentric cylinders, arcosh((r_b^2 + r_p^2 - e^2)/(2 r_b r_p))/(2 pi k_b) "
       "(Incropera "
       "& DeWitt, from memory; equal to conformal mapping onto an annulus)",
       "R_b [K m/W]; r_b 60 mm, r_p 20 mm, no resistance of the pipe, ground of 1e12 W/(m K), the order raised until "
       "nothing changes; without contrast between grout and ground instead, the place may not matter at all",
       "1e-6, as the reference's README asks of converged values"});
  for (const double e : {0.01, 0.025, 0.035}) {
    const double cosine =
        (bore_radius * bore_radius + pipe_radius * pipe_radius - e * e) / (2 * bore_radius * pipe_radius);
    const auto solved = bore::solve_multipoles({bore_radius, grout, 1e12, {{e, 0, pipe_radius, 0}}});
    claim.relative(fmt::format("wall of one temperature, {:g} mm off the axis", 1e3 * e),
                   std::acosh(cosine) / (2 * pi * grout), solved.resistance(0, 0), 1e-6);
    const auto alike = bore::solve_multipoles({bore_radius, grout, grout, {{e, 0, pipe_radius, leg}}});
    claim.relative(fmt::format("ground as the grout, {:g} mm off the axis", 1e3 * e),
                   leg + std::log(bore_radius / pipe_radius) / (2 * pi * grout), alike.resistance(0, 0), 1e-6);
  }
}

}  // namespace

void judge_exact_sections(Check& check) {
  judge_annulus(check);
  judge_off_centre(check);
}

}  // namespace stillground::validation
