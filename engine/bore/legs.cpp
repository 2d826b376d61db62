#include "engine/bore/legs.hpp"

#include <fmt/format.h>

#include <numbers>

namespace stillground::bore {
namespace {

/// Where legs on a circle may stand: distances between opposite ones [m].
struct Spacings {
  double least = 0;  ///< they touch each other
  double most = 0;   ///< they touch the bore's wall
};

Spacings spacings(const keys::Reader& section, const model::Bore& bore, int legs) {
  const double outer = bore.pipe.outer_diameter;
  const double neighbours = legs == 4 ? std::numbers::sqrt2 : 1.0;  // of four legs those beside touch first
  const Spacings range{neighbours * outer, bore.diameter - outer};
  if (range.least > range.most + size_round_off) {
    section.where("diameter")
        .refuse(fmt::format("{} legs of {:.4g} mm do not fit side by side in a bore of {:.4g} mm",
                            legs == 4 ? "four" : "two", 1e3 * outer, 1e3 * bore.diameter));
  }
  return range;
}

}  // namespace

double read_leg_spacing(const keys::Reader& section, const model::Bore& bore, int legs) {
  const Spacings range = spacings(section, bore, legs);
  if (section.one_of({"leg_spacing", "legs"}) == "legs") {
    const std::string where = section.word("legs");
    return where == "touching" ? range.least : where == "midway" ? (range.least + range.most) / 2 : range.most;
  }
  const double spacing = section.quantity("leg_spacing");
  if (spacing < range.least - size_round_off || spacing > range.most + size_round_off) {
    section.where("leg_spacing")
        .refuse(fmt::format(
            "{:.4g} mm between the legs' centres: {} (allowed for this pipe and bore: {:.4g} mm to {:.4g} mm)",
            1e3 * spacing, spacing < range.least ? "the legs overlap" : "the legs do not fit in the bore",
            1e3 * range.least, 1e3 * range.most));
  }
  return spacing;
}

std::vector<Passage> legs_in_turn(const model::Bore& bore, std::size_t ways, int side_by_side) {
  return {ways,
          {.diameter = bore.pipe.inner_diameter(), .roughness = bore.pipe.roughness, .side_by_side = side_by_side}};
}

Filling filling(const model::Bore& bore, const Films& films) {
  return {.inner_radius = bore.pipe.inner_diameter() / 2,
          .film_resistance = films[0],
          .grout_heat_capacity = bore.grout.solid.heat_capacity,
          .pipe_heat_capacity = bore.pipe.heat_capacity};
}

NetworkParts leg_parts(const ModeResistances& modes, const Capacities& capacities, double ground_capacity) {
  return {.bore_resistance = modes.resistance[0],
          .internal_resistance = 2 * modes.resistance[1],
          .even_share = modes.share[0],
          .odd_share = modes.share[1],
          .grout_capacity = capacities.grout,
          .fluid_capacity = capacities.stream[0],
          .even_spread = modes.spread,
          .odd_wall_share = modes.wall[1],
          .ground_capacity = ground_capacity};
}

}  // namespace stillground::bore
