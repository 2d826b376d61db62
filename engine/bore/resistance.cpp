#include "engine/bore/resistance.hpp"

#include <cassert>
#include <cmath>

#include "engine/bore/section_field.hpp"
#include "engine/materials/film.hpp"

namespace stillground::bore {

LegResistances leg_resistances(const Eigen::MatrixXd& matrix) {
  assert(matrix.rows() == 2 && matrix.cols() == 2);
  return {(matrix(0, 0) + matrix(0, 1)) / 2, 2 * (matrix(0, 0) - matrix(0, 1))};
}

GroutShares mean_grout_share(const Multipoles& multipoles) {
  assert(multipoles.section.pipes.size() == 2);
  const double r11 = multipoles.resistance(0, 0);
  const double r12 = multipoles.resistance(0, 1);
  const SectionField even = field_of(multipoles, Eigen::Vector2d{1, 1});
  const SectionField odd = field_of(multipoles, Eigen::Vector2d{1, -1});
  // By symmetry the right half stands for the whole in the even mode.
  return {mean_grout_temperature(even, GroutPart::right) / (r11 + r12),
          mean_grout_temperature(odd, GroutPart::right) / (r11 - r12)};
}

double pipe_resistance(const model::Pipe& pipe, double film_resistance) {
  return film_resistance +
         materials::pipe_wall_resistance(pipe.inner_diameter(), pipe.outer_diameter, pipe.conductivity);
}

BoreSection single_u_section(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                             double leg_resistance) {
  const double x = loop.leg_spacing / 2;
  const double radius = bore.pipe.outer_diameter / 2;
  return {bore.diameter / 2,
          bore.grout.solid.conductivity,
          ground_conductivity,
          {{x, 0, radius, leg_resistance}, {-x, 0, radius, leg_resistance}}};
}

SingleUResistance single_u_resistance(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                                      double film_resistance) {
  const Multipoles multipoles =
      solve_multipoles(single_u_section(bore, loop, ground_conductivity, pipe_resistance(bore.pipe, film_resistance)));
  return {leg_resistances(multipoles.resistance), mean_grout_share(multipoles)};
}

double effective_resistance_uniform_flux(const LegResistances& legs, double length, double mass_flow,
                                         double heat_capacity) {
  const double ratio = length / (mass_flow * heat_capacity);
  return legs.bore + ratio * ratio / (3 * legs.internal);
}

double effective_resistance_uniform_wall(const LegResistances& legs, double length, double mass_flow,
                                         double heat_capacity) {
  const double eta = length / (mass_flow * heat_capacity * std::sqrt(legs.internal * legs.bore));
  return legs.bore * eta / std::tanh(eta);
}

}  // namespace stillground::bore
