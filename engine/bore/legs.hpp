#pragma once

#include "engine/bore/leg_storage.hpp"
#include "engine/bore/loop_type.hpp"
#include "engine/bore/network.hpp"

namespace stillground::bore {

// What loops made of U's have in common: equal legs, evenly round the bore's axis.

inline constexpr keys::Key leg_spacing_key{
    .path = "bore.leg_spacing",
    .kind = keys::Kind::quantity,
    .dimension = units::Dimension::length,
    .least = "10 mm",
    .most = "900 mm",
    .example = "80 mm",
    .example2 = "3 in",
    .help = "centre to centre, of legs that stand opposite each other; this or legs is needed with U's"};

inline constexpr keys::Key legs_key{.path = "bore.legs",
                                    .kind = keys::Kind::word,
                                    .words = "touching|midway|at the wall",
                                    .example = "at the wall",
                                    .help = "instead of leg_spacing: where the legs come to lie"};

/// Sizes in inches and millimetres of one pipe differ by round-off [m].
inline constexpr double size_round_off = 1e-9;

/// Distance of legs that stand opposite each other [m], from `leg_spacing` or `legs`: for two or four legs of the
/// bore's pipe. InputError where they do not fit.
double read_leg_spacing(const keys::Reader& section, const model::Bore& bore, int legs);

/// What the network of legs with one stream down and one up is made of, one U at a time: `modes` even and odd.
NetworkParts leg_parts(const ModeResistances& modes, const Capacities& capacities, double ground_capacity);

/// `ways` legs one after the other, of each `side_by_side`.
std::vector<Passage> legs_in_turn(const model::Bore& bore, std::size_t ways, int side_by_side);

/// The legs' pipe and what fills the bore around them; films[0] is that of a leg.
Filling filling(const model::Bore& bore, const Films& films);

}  // namespace stillground::bore
