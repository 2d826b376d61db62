#include "engine/bore/leg_storage.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/bore/section_field.hpp"

namespace stillground::bore {

namespace {

/// Mean over the annulus of a pipe's wall, over the fluid, when a leg at 1 gives off `heat`.
double mean_wall_share(const SectionPipe& pipe, const Filling& filling, double heat) {
  const double inner = 1 - filling.film_resistance * heat, outer = 1 - pipe.resistance * heat;
  const double ratio = pipe.outer_radius / filling.inner_radius;
  // The profile is a logarithm of the radius, which stands for an area.
  return outer + (inner - outer) * (1 / (2 * std::log(ratio)) - 1 / (ratio * ratio - 1));
}

/// Heat capacities per leg [J/(m K)].
struct LegCapacities {
  double grout = 0;
  double pipe = 0;

  double mean(double of_grout, double of_pipe) const { return (grout * of_grout + pipe * of_pipe) / (grout + pipe); }
};

LegCapacities leg_capacities(const BoreSection& section, const Filling& filling) {
  const auto disc = [](double radius) { return std::numbers::pi * radius * radius; };
  const double pipe = disc(section.pipes.front().outer_radius);
  return {filling.grout_heat_capacity * (disc(section.radius) / double(section.pipes.size()) - pipe),
          filling.pipe_heat_capacity * (pipe - disc(filling.inner_radius))};
}

/// Leg 1's temperature over its heat when the legs give off `pattern` times that heat.
double mode_resistance(const Multipoles& multipoles, const Eigen::VectorXd& pattern) {
  return multipoles.resistance.row(0).dot(pattern);
}

}  // namespace

EvenStorage even_storage(const Multipoles& multipoles, const Filling& filling) {
  const Eigen::Index legs = multipoles.resistance.rows();
  const double fluid = multipoles.resistance.row(0).sum();  // of unit heat from every leg
  const SectionField field = field_of(multipoles, Eigen::VectorXd::Ones(legs));
  const LegCapacities capacity = leg_capacities(multipoles.section, filling);
  const double pipe = mean_wall_share(multipoles.section.pipes.front(), filling, 1 / fluid);
  const double mean = capacity.mean(mean_grout_temperature(field) / fluid, pipe);
  const double square = capacity.mean(mean_square_temperature(field, 0) / (fluid * fluid), pipe * pipe);
  return {mean, std::sqrt(std::max(0.0, square - mean * mean))};
}

OddStorage opposite_storage(const Multipoles& multipoles, const Filling& filling) {
  const Eigen::Index legs = multipoles.resistance.rows();
  Eigen::VectorXd pattern = Eigen::VectorXd::Zero(legs);
  pattern[0] = 1;
  pattern[legs / 2] = -1;
  const double fluid = mode_resistance(multipoles, pattern);
  const SectionField field = field_of(multipoles, pattern);
  const double pipe = mean_wall_share(multipoles.section.pipes.front(), filling, 1 / fluid);
  // The idle legs, half of each, are at zero.
  const double hot = 2 / double(legs);
  // The half is leg 1's sector and half of each idle leg's.
  const double squares =
      mean_square_temperature(field, 0) * hot + (legs > 2 ? mean_square_temperature(field, 1) * (1 - hot) : 0.0);
  const LegCapacities capacity = leg_capacities(multipoles.section, filling);
  return {std::sqrt(capacity.mean(squares / (fluid * fluid), hot * pipe * pipe)),
          mean_wall_temperature(field, std::numbers::pi / 2) / fluid};
}

OddStorage alternate_storage(const Multipoles& multipoles, const Filling& filling) {
  const Eigen::Vector4d pattern{1, -1, 1, -1};
  const double fluid = mode_resistance(multipoles, pattern);
  const SectionField field = field_of(multipoles, pattern);
  const double pipe = mean_wall_share(multipoles.section.pipes.front(), filling, 1 / fluid);
  const LegCapacities capacity = leg_capacities(multipoles.section, filling);
  const double square = mean_square_temperature(field, 0) / (fluid * fluid);
  return {std::sqrt(capacity.mean(square, pipe * pipe)), mean_wall_temperature(field, std::numbers::pi / 4) / fluid};
}

}  // namespace stillground::bore
