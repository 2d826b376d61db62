#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "engine/field/superposition.hpp"
#include "engine/record/read/result.hpp"
#include "tools/results/plan.hpp"

/// The ground's temperature at any place by superposition:
///   T(x, y, z, t) = T_0(z, t) + sum over the bores of theta_g(z, r, t),
/// T_0 the undisturbed column, theta_g the rise that the bore's own group has marched, r the distance to its axis. Each
/// group has its own top and depth in its theta.
namespace stillground::results {

/// The ground at one instant.
struct GroundState {
  double time = 0;                  ///< since the run's start [s]
  std::vector<double> rise;         ///< [group][z][r], r fastest [K]
  std::vector<double> undisturbed;  ///< [z] [K]
};

/// A snapshot, or straight between the two about the instant [s]. Throws InputError if the file has no fields, if the
/// instant is outside the run, or if the snapshots about it are more than a month apart (`fields: yearly`).
GroundState ground_at(const record::read::Result& result, double time);

/// Two layers and their parts in a value at a depth.
struct DepthWeights {
  std::array<std::size_t, 2> layer{};
  std::array<double, 2> weight{};
};

/// For a rise: straight between the layers' centres and from the first one to nothing at the surface; below the last
/// centre that one's value is held. `z`: centres [m], at least two.
DepthWeights rise_weights(std::span<const double> z, double depth);

/// For the undisturbed column: the same, but carried on straight up to the surface.
DepthWeights column_weights(std::span<const double> z, double depth);

/// The undisturbed temperature at a depth [K].
double undisturbed_at(const record::Header& header, const GroundState& state, double depth);

/// Every group's rise at one depth, [group][r] [K].
std::vector<double> rise_at_depth(const record::Header& header, const GroundState& state, double depth);

/// Which cells of [group][r] a place of the plan reads, and with which weights: four for each bore.
struct PlaceWeights {
  std::vector<std::size_t> cell;  ///< group x cells + r
  std::vector<double> weight;
};
PlaceWeights place_weights(const record::Header& header, const PlanPoint& place);

/// The rise of all bores together at a place, from every group's rise at one depth [K].
double rise_at(const PlaceWeights& place, std::span<const double> groups);

/// The same at every layer's centre, [z] [K].
std::vector<double> rise_profile(const record::Header& header, const PlaceWeights& place, std::span<const double> rise);

}  // namespace stillground::results
