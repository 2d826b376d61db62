#include <numbers>

#include "engine/bore/resistance.hpp"

namespace stillground::bore {

namespace {

double disc(double diameter) {
  return std::numbers::pi * diameter * diameter / 4;
}

/// Grout and pipe walls round `legs` equal legs.
double round_legs(const model::Bore& bore, int legs) {
  const double pipes = legs * disc(bore.pipe.outer_diameter);
  return bore.grout.solid.heat_capacity * (disc(bore.diameter) - pipes) +
         bore.pipe.heat_capacity * (pipes - legs * disc(bore.pipe.inner_diameter()));
}

Capacities of(const model::SingleU&, const model::Bore& bore, double fluid) {
  const double leg = fluid * disc(bore.pipe.inner_diameter());
  return {round_legs(bore, 2), {leg, leg}};
}

Capacities of(const model::DoubleU& loop, const model::Bore& bore, double fluid) {
  const double leg = fluid * disc(bore.pipe.inner_diameter());
  const double grout = round_legs(bore, 4);
  if (loop.connection == model::DoubleU::Connection::series) return {grout, {leg, leg, leg, leg}};
  return {grout, {2 * leg, 2 * leg}};
}

Capacities of(const model::Coaxial& loop, const model::Bore& bore, double fluid) {
  const model::Pipe& inner = loop.inner;
  const double inner_wall = inner.heat_capacity * (disc(inner.outer_diameter) - disc(inner.inner_diameter()));
  const double annulus = fluid * (disc(bore.pipe.inner_diameter()) - disc(inner.outer_diameter)) + inner_wall / 2;
  const double within = fluid * disc(inner.inner_diameter()) + inner_wall / 2;
  const bool down_annulus = loop.down == model::Coaxial::Down::annulus;
  return {round_legs(bore, 1), {down_annulus ? annulus : within, down_annulus ? within : annulus}};
}

Network network_of(const model::SingleU&, const ModeResistances& modes, const Capacities& c, double ground) {
  return make_network(NetworkParts{modes.resistance[0], 2 * modes.resistance[1], modes.share[0], modes.share[1],
                                   c.grout, c.stream[0], modes.spread, modes.wall[1], ground});
}

Network in_parallel(const model::DoubleU& loop, const ModeResistances& modes, const Capacities& c, double ground) {
  NetworkParts parts{
      modes.resistance[0], 2 * modes.resistance[1], modes.share[0], modes.share[1], c.grout, c.stream[0], modes.spread,
      modes.wall[1]};
  // The downward stream is two legs: two quarters of the bore, or of two opposite modes a half each.
  parts.ground_capacity = 2 * ground;
  parts.shape = loop.crossed ? OddShape::halves : OddShape::quarters;
  parts.odd_part = loop.crossed ? 1 : 0.5;
  return make_network(parts);
}

Network network_of(const model::DoubleU& loop, const ModeResistances& modes, const Capacities& c, double ground) {
  if (loop.connection == model::DoubleU::Connection::parallel) return in_parallel(loop, modes, c, ground);
  return make_network(SeriesParts{modes.resistance[0], modes.resistance[1], modes.resistance[2], modes.share[0],
                                  modes.share[1], modes.share[2], c.grout, c.stream[0], loop.crossed, modes.spread,
                                  modes.wall[1], modes.wall[2], ground});
}

Network network_of(const model::Coaxial& loop, const ModeResistances& modes, const Capacities& c, double) {
  const bool down_annulus = loop.down == model::Coaxial::Down::annulus;
  return make_network(ConcentricParts{modes.resistance[0], modes.resistance[1], modes.share[0], c.grout,
                                      c.stream.at(down_annulus ? 0 : 1), c.stream.at(down_annulus ? 1 : 0),
                                      down_annulus, modes.spread});
}

Amounts legs(const model::Bore& bore, int number) {
  return {static_cast<double>(number), number * disc(bore.pipe.inner_diameter()),
          disc(bore.diameter) - number * disc(bore.pipe.outer_diameter)};
}

Amounts amounts_of(const model::SingleU&, const model::Bore& bore) {
  return legs(bore, 2);
}

Amounts amounts_of(const model::DoubleU&, const model::Bore& bore) {
  return legs(bore, 4);
}

Amounts amounts_of(const model::Coaxial& loop, const model::Bore& bore) {
  Amounts amounts = legs(bore, 1);
  amounts.pipe += 1;
  amounts.fluid -= disc(loop.inner.outer_diameter) - disc(loop.inner.inner_diameter());
  return amounts;
}

}  // namespace

Amounts amounts(const model::Bore& bore) {
  return std::visit([&](const auto& loop) { return amounts_of(loop, bore); }, bore.loop);
}

Capacities capacities(const model::Bore& bore, double fluid_heat_capacity) {
  return std::visit([&](const auto& loop) { return of(loop, bore, fluid_heat_capacity); }, bore.loop);
}

std::size_t passes(const model::Loop& loop) {
  const auto* two = std::get_if<model::DoubleU>(&loop);
  return two && two->connection == model::DoubleU::Connection::series ? 2 : 1;
}

Network loop_network(const model::Loop& loop, const ModeResistances& modes, const Capacities& capacities,
                     double ground_capacity) {
  return std::visit([&](const auto& type) { return network_of(type, modes, capacities, ground_capacity); }, loop);
}

}  // namespace stillground::bore
