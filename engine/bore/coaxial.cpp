// A pipe within a pipe on the bore's axis: the inner stream exchanges with the annulus alone, the annulus with the
// wall. Everything is a ring, so that resistances and shares are closed forms.
#include "engine/bore/coaxial.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "engine/bore/legs.hpp"
#include "engine/bore/pipes.hpp"

namespace stillground::bore {
namespace {

using Down = model::Coaxial::Down;

constexpr std::array own{keys::Key{.path = "bore.inner_pipe",
                                   .kind = keys::Kind::map,
                                   .example = "{outer_diameter: 40 mm, wall: 3.7 mm, conductivity: 0.4 W/(m K)}",
                                   .help = "of a coaxial loop; keys as of pipe",
                                   .inside = "bore.pipe"},
                         keys::Key{.path = "bore.down",
                                   .kind = keys::Kind::word,
                                   .preset = "annulus",
                                   .words = "annulus|inner",
                                   .example = "inner",
                                   .help = "where the fluid of a coaxial loop goes down"}};

const model::Coaxial& loop_of(const model::Bore& bore) {
  return std::get<model::Coaxial>(bore.loop);
}

/// A ring between two radii through which heat flows outwards, and what it stores.
struct Ring {
  double inner = 0, outer = 0;  ///< radii [m]
  double conductivity = 0;
  double heat_capacity = 0;

  /// ln(outer/inner)/(2 pi k) [K m/W].
  double resistance() const { return std::log(outer / inner) / (2 * std::numbers::pi * conductivity); }
  double area() const { return std::numbers::pi * (outer * outer - inner * inner); }

  /// Mean over the area of the temperature above the outer edge, for unit heat through the ring [K m/W].
  double mean_above_outer() const {
    const double ratio = outer * outer - inner * inner;
    return (ratio / 2 - inner * inner * std::log(outer / inner)) / (2 * std::numbers::pi * conductivity * ratio);
  }

  /// Mean of its square [K2 m2/W2]: of L = ln(outer/r), the integral of 2 r L^2 dr between the radii is
  /// ratio/2 - inner^2 (L^2 + L) at L = ln(outer/inner).
  double mean_square_above_outer() const {
    const double ratio = outer * outer - inner * inner, log = std::log(outer / inner);
    const double scale = 2 * std::numbers::pi * conductivity;
    return (ratio / 2 - inner * inner * (log * log + log)) / (scale * scale * ratio);
  }
};

/// Films: [0] inside the inner pipe, [1] on it, [2] inside the outer pipe.
class CoaxialType final : public LoopType {
 public:
  std::span<const keys::Key> own_keys() const override { return own; }

  model::Loop read(const LoopSection& section, const model::Bore& bore) const override;

  std::vector<OwnPipe> own_pipes(const model::Loop& loop) const override {
    return {{"inner pipe", std::get<model::Coaxial>(loop).inner}};
  }

  Amounts amounts(const model::Bore& bore) const override {
    const model::Pipe& inner = loop_of(bore).inner;
    Amounts amounts = pipe_amounts(bore, 1);
    amounts.pipe += 1;
    amounts.fluid -= circle_area(inner.outer_diameter) - circle_area(inner.inner_diameter());
    return amounts;
  }

  std::vector<Passage> passages(const model::Bore& bore) const override {
    const model::Pipe& inner = loop_of(bore).inner;
    std::vector<Passage> ways = {
        {.within = inner.outer_diameter, .diameter = bore.pipe.inner_diameter(), .roughness = bore.pipe.roughness},
        {.diameter = inner.inner_diameter(), .roughness = inner.roughness}};
    if (loop_of(bore).down == Down::inner) std::swap(ways.front(), ways.back());
    return ways;
  }

  PipeFlow flow(const model::Bore& bore, double mass_flow, const materials::FluidState& state) const override;

  double film_part(const Films& films) const override { return films[2]; }

  ModeResistances resistances(const model::Bore& bore, double, const Films& films) const override;

  bool worth_keeping() const override { return false; }

  double internal_resistance(const ModeResistances& modes) const override { return modes.resistance[1]; }

  std::size_t passes(const model::Loop&) const override { return 1; }

  Capacities capacities(const model::Bore& bore, double fluid_heat_capacity) const override {
    const model::Pipe& inner = loop_of(bore).inner;
    const double inner_wall =
        inner.heat_capacity * (circle_area(inner.outer_diameter) - circle_area(inner.inner_diameter()));
    const double annulus =
        fluid_heat_capacity * (circle_area(bore.pipe.inner_diameter()) - circle_area(inner.outer_diameter)) +
        inner_wall / 2;
    const double within = fluid_heat_capacity * circle_area(inner.inner_diameter()) + inner_wall / 2;
    const bool down_annulus = loop_of(bore).down == Down::annulus;
    return {grout_capacity(bore, 1), {down_annulus ? annulus : within, down_annulus ? within : annulus}};
  }

  Network network(const model::Loop& loop, const ModeResistances& modes, const Capacities& capacities,
                  double) const override {
    const bool down_annulus = std::get<model::Coaxial>(loop).down == Down::annulus;
    return make_network(ConcentricParts{.wall_resistance = modes.resistance[0],
                                        .internal_resistance = modes.resistance[1],
                                        .share = modes.share[0],
                                        .grout_capacity = capacities.grout,
                                        .annulus_capacity = capacities.stream.at(down_annulus ? 0 : 1),
                                        .inner_capacity = capacities.stream.at(down_annulus ? 1 : 0),
                                        .down_annulus = down_annulus,
                                        .spread = modes.spread});
  }
};

model::Loop CoaxialType::read(const LoopSection& section, const model::Bore& bore) const {
  const model::Pipe& outer = bore.pipe;
  if (outer.outer_diameter > bore.diameter + size_round_off) {
    section.keys.where("pipe").refuse(fmt::format("an outer pipe of {:.4g} mm does not fit in a bore of {:.4g} mm",
                                                  1e3 * outer.outer_diameter, 1e3 * bore.diameter));
  }
  model::Coaxial loop;
  loop.inner = section.pipe("inner_pipe");
  if (loop.inner.outer_diameter > 0.98 * outer.inner_diameter()) {
    section.keys.where("inner_pipe")
        .refuse(fmt::format("an inner pipe of {:.4g} mm leaves no annulus in an outer one of {:.4g} mm within",
                            1e3 * loop.inner.outer_diameter, 1e3 * outer.inner_diameter()));
  }
  loop.down = section.keys.word("down") == "inner" ? Down::inner : Down::annulus;
  return loop;
}

PipeFlow CoaxialType::flow(const model::Bore& bore, double mass_flow, const materials::FluidState& state) const {
  const model::Pipe& within = loop_of(bore).inner;
  const double inner = within.outer_diameter, outer = bore.pipe.inner_diameter();
  const double reynolds = materials::annulus_reynolds(mass_flow, inner, outer, state.viscosity);
  const auto at = [&](materials::AnnulusWall wall) {
    const double nusselt = materials::annulus_nusselt(reynolds, state.prandtl(), inner / outer, wall);
    return materials::annulus_film_resistance(nusselt, state.conductivity, inner, outer, wall);
  };
  PipeFlow flow = flow_in_pipe(within, mass_flow, state);
  flow.films[1] = at(materials::AnnulusWall::inner);
  flow.films[2] = at(materials::AnnulusWall::outer);
  flow.velocity = std::max(flow.velocity, mean_velocity(mass_flow, state.density, inner, outer));
  if (reynolds < flow.reynolds) {
    flow.reynolds = reynolds;
    flow.regime = materials::regime(reynolds);
  }
  return flow;
}

// Annulus to wall through film, outer pipe and grout; inner stream to annulus through film, pipe, film.
ModeResistances CoaxialType::resistances(const model::Bore& bore, double, const Films& films) const {
  const auto [in_inner, on_inner, in_outer] = films;
  const model::Pipe& pipe = bore.pipe;
  const Ring wall{pipe.inner_diameter() / 2, pipe.outer_diameter / 2, pipe.conductivity, pipe.heat_capacity};
  const Ring grout{pipe.outer_diameter / 2, bore.diameter / 2, bore.grout.solid.conductivity,
                   bore.grout.solid.heat_capacity};
  const double in_grout = grout.outer > grout.inner ? grout.resistance() : 0.0;
  const double total = in_outer + wall.resistance() + in_grout;
  const double in_wall = wall.heat_capacity * wall.area(), in_ring = grout.heat_capacity * grout.area();
  const double of_wall = wall.mean_above_outer(), of_grout = in_grout > 0 ? grout.mean_above_outer() : 0.0;
  const double square_wall = wall.mean_square_above_outer() + in_grout * (2 * of_wall + in_grout);
  const double square_grout = in_grout > 0 ? grout.mean_square_above_outer() : 0.0;
  const double mean = (in_wall * (of_wall + in_grout) + in_ring * of_grout) / (in_wall + in_ring) / total;
  const double square = (in_wall * square_wall + in_ring * square_grout) / (in_wall + in_ring) / (total * total);
  return {.resistance = {total, in_inner + pipe_resistance(loop_of(bore).inner, on_inner)},
          .share = {mean, 0.5},
          .spread = std::sqrt(std::max(0.0, square - mean * mean))};
}

}  // namespace

Network make_network(const ConcentricParts& parts) {
  const std::size_t annulus = parts.down_annulus ? 0 : 1;
  const std::size_t inner = 1 - annulus;
  PerStream of_annulus{}, difference{};
  of_annulus.at(annulus) = 1;
  difference.at(inner) = 1;
  difference.at(annulus) = -1;
  const Mode to_wall = even_mode({.resistance = parts.wall_resistance,
                                  .mean = parts.share,
                                  .spread = parts.spread,
                                  .capacity = parts.grout_capacity});
  Network network;
  network.passes = 1;
  network.modes[0] = of_streams(to_wall, of_annulus, of_annulus);
  network.modes[1] = of_streams(steady_mode(parts.internal_resistance), difference, difference);
  network.capacity.at(annulus) = parts.annulus_capacity;
  network.capacity.at(inner) = parts.inner_capacity;
  return network;
}

const LoopType& type_of(const model::Coaxial&) {
  static const CoaxialType type;
  return type;
}

}  // namespace stillground::bore
