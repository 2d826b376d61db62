#include "engine/bore/resistance.hpp"

namespace stillground::bore {

BoreSection double_u_section(const model::Bore& bore, const model::DoubleU& loop, double ground_conductivity,
                             double leg_resistance) {
  const double far = loop.leg_spacing / 2;
  const double radius = bore.pipe.outer_diameter / 2;
  return {bore.diameter / 2,
          bore.grout.solid.conductivity,
          ground_conductivity,
          {{far, 0, radius, leg_resistance},
           {0, far, radius, leg_resistance},
           {-far, 0, radius, leg_resistance},
           {0, -far, radius, leg_resistance}}};
}

ModeResistances mode_resistances(const model::Bore& bore, const model::DoubleU& loop, double ground_conductivity,
                                 const Films& films) {
  const Multipoles multipoles =
      solve_multipoles(double_u_section(bore, loop, ground_conductivity, pipe_resistance(bore.pipe, films.pipe)));
  const Eigen::RowVectorXd of_leg = multipoles.resistance.row(0);
  const double all = of_leg.sum() / 4;  // of the heat of all four legs
  const double alternating = of_leg[0] - of_leg[1] + of_leg[2] - of_leg[3];
  const double opposed = of_leg[0] - of_leg[2];
  const Filling inside = filling(bore, films);
  const EvenStorage even = even_storage(multipoles, inside);
  const OddStorage alternate = alternate_storage(multipoles, inside);
  const OddStorage opposite = opposite_storage(multipoles, inside);
  if (loop.connection == model::DoubleU::Connection::series) {
    return {{all, alternating, opposed, opposed},
            {even.mean, alternate.root_mean_square, opposite.root_mean_square, opposite.root_mean_square},
            {0, alternate.wall, opposite.wall, opposite.wall},
            even.spread};
  }
  // A U's own legs opposite each other: the two that go down stand side by side, and each is half of both opposite
  // modes. The downward stream is two legs.
  const OddStorage& odd = loop.crossed ? opposite : alternate;
  return {
      {all, (loop.crossed ? opposed : alternating) / 2}, {even.mean, odd.root_mean_square}, {0, odd.wall}, even.spread};
}

}  // namespace stillground::bore
