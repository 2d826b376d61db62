// One U: two equal legs on a diameter of the bore, one stream down and one up.
//
// Modes: both legs alike, T - T_wall = q' R_b; legs at +D and -D that give off +q and -q, D = q R_a/2, so that
// T_down - T_up = q R_a.
#include "engine/bore/effective.hpp"
#include "engine/bore/legs.hpp"
#include "engine/bore/pipes.hpp"

namespace stillground::bore {
namespace {

constexpr std::array own{leg_spacing_key, legs_key};

/// Leg 1 on the right of the x axis. `leg_resistance` of one pipe, film and wall [K m/W].
BoreSection section_of(const model::Bore& bore, double ground_conductivity, double leg_resistance) {
  const double x = std::get<model::SingleU>(bore.loop).leg_spacing / 2;
  const double radius = bore.pipe.outer_diameter / 2;
  return {.radius = bore.diameter / 2,
          .grout_conductivity = bore.grout.solid.conductivity,
          .ground_conductivity = ground_conductivity,
          .pipes = {{x, 0, radius, leg_resistance}, {-x, 0, radius, leg_resistance}}};
}

class SingleUType final : public LoopType {
 public:
  std::span<const keys::Key> own_keys() const override { return own; }

  model::Loop read(const LoopSection& section, const model::Bore& bore) const override {
    return model::SingleU{read_leg_spacing(section.keys, bore, 2)};
  }

  std::vector<OwnPipe> own_pipes(const model::Loop&) const override { return {}; }

  Amounts amounts(const model::Bore& bore) const override { return pipe_amounts(bore, 2); }

  std::vector<Passage> passages(const model::Bore& bore) const override { return legs_in_turn(bore, 2, 1); }

  PipeFlow flow(const model::Bore& bore, double mass_flow, const materials::FluidState& state) const override {
    return flow_in_pipe(bore.pipe, mass_flow, state);
  }

  double film_part(const Films& films) const override { return films[0] / 2; }

  ModeResistances resistances(const model::Bore& bore, double ground_conductivity, const Films& films) const override {
    const Multipoles multipoles =
        solve_multipoles(section_of(bore, ground_conductivity, pipe_resistance(bore.pipe, films[0])));
    const LegResistances legs = leg_resistances(multipoles.resistance);
    const EvenStorage even = even_storage(multipoles, filling(bore, films));
    const OddStorage odd = opposite_storage(multipoles, filling(bore, films));
    return {.resistance = {legs.bore, legs.internal / 2},
            .share = {even.mean, odd.root_mean_square},
            .wall = {0, odd.wall},
            .spread = even.spread};
  }

  bool worth_keeping() const override { return true; }

  double internal_resistance(const ModeResistances& modes) const override { return 2 * modes.resistance[1]; }

  std::size_t passes(const model::Loop&) const override { return 1; }

  Capacities capacities(const model::Bore& bore, double fluid_heat_capacity) const override {
    const double leg = fluid_heat_capacity * circle_area(bore.pipe.inner_diameter());
    return {grout_capacity(bore, 2), {leg, leg}};
  }

  Network network(const model::Loop&, const ModeResistances& modes, const Capacities& capacities,
                  double ground_capacity) const override {
    return make_network(leg_parts(modes, capacities, ground_capacity));
  }
};

}  // namespace

const LoopType& type_of(const model::SingleU&) {
  static const SingleUType type;
  return type;
}

}  // namespace stillground::bore
