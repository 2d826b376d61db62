// Two U's of one pipe, their four legs on a square about the bore's axis; side by side (parallel) they share the flow,
// or it goes through one after the other (series).
//
// Modes, the eigenvectors of the legs' circulant matrix of resistances: all legs alike, R_b; legs round the square at
// +D, -D, +D, -D, R_alt; opposite legs at +D and -D, R_opp, twice. In parallel two legs go each way: the second mode is
// R_alt/2, or R_opp/2 where a U's own legs stand opposite each other.
#include "engine/bore/double_u.hpp"

#include "engine/bore/legs.hpp"
#include "engine/bore/pipes.hpp"

namespace stillground::bore {
namespace {

using Connection = model::DoubleU::Connection;

constexpr std::array own{
    leg_spacing_key, legs_key,
    keys::Key{.path = "bore.connection",
              .kind = keys::Kind::word,
              .preset = "parallel",
              .words = "parallel|series",
              .example = "series",
              .help = "of the two U's of a double-u: they share the flow, or it goes through one after the other"},
    keys::Key{.path = "bore.each_u",
              .kind = keys::Kind::word,
              .preset = "opposite",
              .words = "opposite|side by side",
              .example = "side by side",
              .help = "how the two legs of each U of a double-u stand"}};

const model::DoubleU& loop_of(const model::Bore& bore) {
  return std::get<model::DoubleU>(bore.loop);
}

Network in_parallel(const model::DoubleU& loop, const ModeResistances& modes, const Capacities& capacities,
                    double ground_capacity) {
  // The downward stream is two legs: two quarters of the bore, or of two opposite modes a half each.
  NetworkParts parts = leg_parts(modes, capacities, 2 * ground_capacity);
  parts.shape = loop.opposite_legs ? OddShape::halves : OddShape::quarters;
  parts.odd_part = loop.opposite_legs ? 1 : 0.5;
  return make_network(parts);
}

class DoubleUType final : public LoopType {
 public:
  std::span<const keys::Key> own_keys() const override { return own; }

  model::Loop read(const LoopSection& section, const model::Bore& bore) const override {
    model::DoubleU loop;
    loop.leg_spacing = read_leg_spacing(section.keys, bore, 4);
    loop.connection = section.keys.word("connection") == "series" ? Connection::series : Connection::parallel;
    loop.opposite_legs = section.keys.word("each_u") == "opposite";
    return loop;
  }

  std::vector<OwnPipe> own_pipes(const model::Loop&) const override { return {}; }

  Amounts amounts(const model::Bore& bore) const override { return pipe_amounts(bore, 4); }

  std::vector<Passage> passages(const model::Bore& bore) const override {
    const bool shared = loop_of(bore).connection == Connection::parallel;
    return shared ? legs_in_turn(bore, 2, 2) : legs_in_turn(bore, 4, 1);
  }

  PipeFlow flow(const model::Bore& bore, double mass_flow, const materials::FluidState& state) const override {
    const bool shared = loop_of(bore).connection == Connection::parallel;
    return flow_in_pipe(bore.pipe, shared ? mass_flow / 2 : mass_flow, state);
  }

  double film_part(const Films& films) const override { return films[0] / 4; }

  ModeResistances resistances(const model::Bore& bore, double ground_conductivity, const Films& films) const override;

  bool worth_keeping() const override { return true; }

  double internal_resistance(const ModeResistances& modes) const override { return 2 * modes.resistance[1]; }

  std::size_t passes(const model::Loop& loop) const override {
    return std::get<model::DoubleU>(loop).connection == Connection::series ? 2 : 1;
  }

  Capacities capacities(const model::Bore& bore, double fluid_heat_capacity) const override {
    const double leg = fluid_heat_capacity * circle_area(bore.pipe.inner_diameter());
    const double grout = grout_capacity(bore, 4);
    if (loop_of(bore).connection == Connection::series) return {grout, {leg, leg, leg, leg}};
    return {grout, {2 * leg, 2 * leg}};
  }

  Network network(const model::Loop& any, const ModeResistances& modes, const Capacities& capacities,
                  double ground_capacity) const override {
    const auto& loop = std::get<model::DoubleU>(any);
    if (loop.connection == Connection::parallel) return in_parallel(loop, modes, capacities, ground_capacity);
    return make_network(SeriesParts{.bore_resistance = modes.resistance[0],
                                    .alternate_resistance = modes.resistance[1],
                                    .opposite_resistance = modes.resistance[2],
                                    .even_share = modes.share[0],
                                    .alternate_share = modes.share[1],
                                    .opposite_share = modes.share[2],
                                    .grout_capacity = capacities.grout,
                                    .fluid_capacity = capacities.stream[0],
                                    .opposite_legs = loop.opposite_legs,
                                    .even_spread = modes.spread,
                                    .alternate_wall_share = modes.wall[1],
                                    .opposite_wall_share = modes.wall[2],
                                    .ground_capacity = ground_capacity});
  }
};

ModeResistances DoubleUType::resistances(const model::Bore& bore, double ground_conductivity,
                                         const Films& films) const {
  const model::DoubleU& loop = loop_of(bore);
  const Multipoles multipoles =
      solve_multipoles(double_u_section(bore, ground_conductivity, pipe_resistance(bore.pipe, films[0])));
  const Eigen::RowVectorXd of_leg = multipoles.resistance.row(0);
  const double all = of_leg.sum() / 4;  // of the heat of all four legs
  const double alternating = of_leg[0] - of_leg[1] + of_leg[2] - of_leg[3];
  const double opposed = of_leg[0] - of_leg[2];
  const Filling inside = filling(bore, films);
  const EvenStorage even = even_storage(multipoles, inside);
  const OddStorage alternate = alternate_storage(multipoles, inside);
  const OddStorage opposite = opposite_storage(multipoles, inside);
  if (loop.connection == Connection::series) {
    return {.resistance = {all, alternating, opposed, opposed},
            .share = {even.mean, alternate.root_mean_square, opposite.root_mean_square, opposite.root_mean_square},
            .wall = {0, alternate.wall, opposite.wall, opposite.wall},
            .spread = even.spread};
  }
  // A U's own legs opposite each other: the two that go down stand side by side, and each is half of both opposite
  // modes. The downward stream is two legs.
  const OddStorage& odd = loop.opposite_legs ? opposite : alternate;
  return {.resistance = {all, (loop.opposite_legs ? opposed : alternating) / 2},
          .share = {even.mean, odd.root_mean_square},
          .wall = {0, odd.wall},
          .spread = even.spread};
}

}  // namespace

BoreSection double_u_section(const model::Bore& bore, double ground_conductivity, double leg_resistance) {
  const double far = loop_of(bore).leg_spacing / 2;
  const double radius = bore.pipe.outer_diameter / 2;
  return {.radius = bore.diameter / 2,
          .grout_conductivity = bore.grout.solid.conductivity,
          .ground_conductivity = ground_conductivity,
          .pipes = {{far, 0, radius, leg_resistance},
                    {0, far, radius, leg_resistance},
                    {-far, 0, radius, leg_resistance},
                    {0, -far, radius, leg_resistance}}};
}

const LoopType& type_of(const model::DoubleU&) {
  static const DoubleUType type;
  return type;
}

Network make_network(const SeriesParts& parts) {
  // Round the square the legs are down 1, up 1, down 2, up 2; a U's own legs opposite: down 1, down 2, up 1, up 2.
  // Streams are numbered down 1, down 2, up 1, up 2.
  const std::array<std::size_t, 4> round =
      parts.opposite_legs ? std::array<std::size_t, 4>{0, 1, 2, 3} : std::array<std::size_t, 4>{0, 2, 1, 3};
  const auto laid = [&](const std::array<double, 4>& legs) {
    PerStream streams{};
    for (std::size_t corner = 0; corner < 4; ++corner) streams.at(round.at(corner)) = legs.at(corner);
    return streams;
  };
  const Mode even = even_mode({.resistance = parts.bore_resistance,
                               .mean = parts.even_share,
                               .spread = parts.even_spread,
                               .capacity = parts.grout_capacity});
  const Mode alternate = odd_mode({.resistance = parts.alternate_resistance,
                                   .share = parts.alternate_share,
                                   .wall_share = parts.alternate_wall_share,
                                   .capacity = parts.grout_capacity / 4,
                                   .ground_capacity = parts.ground_capacity,
                                   .shape = OddShape::quarters});
  const Mode opposite = odd_mode({.resistance = parts.opposite_resistance,
                                  .share = parts.opposite_share,
                                  .wall_share = parts.opposite_wall_share,
                                  .capacity = parts.grout_capacity / 2,
                                  .ground_capacity = parts.ground_capacity,
                                  .shape = OddShape::halves});
  Network network;
  network.passes = 2;
  network.modes[0] = of_streams(even, laid({0.25, 0.25, 0.25, 0.25}), laid({0.25, 0.25, 0.25, 0.25}));
  network.modes[1] = of_streams(alternate, laid({0.25, -0.25, 0.25, -0.25}), laid({1, -1, 1, -1}));
  network.modes[2] = of_streams(opposite, laid({0.5, 0, -0.5, 0}), laid({1, 0, -1, 0}));
  network.modes[3] = of_streams(opposite, laid({0, 0.5, 0, -0.5}), laid({0, 1, 0, -1}));
  network.capacity.fill(parts.fluid_capacity);
  return network;
}

}  // namespace stillground::bore
