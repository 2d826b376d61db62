#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "engine/march/problem.hpp"
#include "engine/transit/exchange.hpp"
#include "engine/transit/near_ground.hpp"

namespace stillground::transit {

/// A bore cut into slices of equal height.
struct SliceChoice {
  double top = 0;     ///< [m]
  double depth = 0;   ///< active length [m]
  double radius = 0;  ///< [m]
  std::size_t slices = 0;
};

/// Where slices lie in the ground's layers; networks as a run's flow regimes number them by layer.
std::vector<Stretch> stretches_of(const ground::Grid& grid, const std::vector<std::size_t>& network_of_layer,
                                  const SliceChoice& choice);

/// The exchange of one step in every stretch of a bore.
using Exchanges = std::vector<Exchange>;

/// One bore with plug flow: fluid moves by whole slices and is never mixed along the way. A stream takes in fluid
/// before its first slice until a slice is full; then all its slices move on by one.
class SlicedBore {
 public:
  /// `streams`: 2 or 4 with `capacity` [J/(m K)] each; all at the ambient temperature.
  SlicedBore(const SliceChoice& choice, std::vector<Stretch> stretches, std::vector<double> capacity);

  std::size_t streams() const { return capacity_.size(); }
  const NearGround& ground() const { return ground_; }

  /// The ground's temperature but for the bore's own heat, [slice] [K]. The first call fills the bore with it.
  void set_ambient(std::span<const double> ambient);

  /// Warms all that the bore holds, as if its ambient had always been so much warmer [K].
  void shift(double warmer);

  /// Streams, nodes and ground exchange for a step while the fluid lies still.
  void exchange(const Exchanges& exchanges, double step);

  /// The ground near the bore takes what came to it since the last call `interval` seconds ago.
  void warm_ground(double interval);

  /// The ground near the bore takes `heat` [W], even along the bore, for `interval` [s].
  void warm_ground(double interval, double heat);

  /// Mean temperature of the fluid [K].
  double fluid() const;

  /// Mean temperature of the first `amount` [J/K] of fluid that stands at the stream's end [K].
  double leaving(std::size_t stream, double amount) const;

  /// Sends `amount` [J/K] of fluid of one temperature into the stream and as much out at its end.
  void send(std::size_t stream, double amount, double temperature);

 private:
  double* row(std::size_t unknown) { return values_.data() + unknown * slices_; }
  double at_end(std::size_t stream, std::size_t behind) const;
  void move_on(std::size_t stream, double entering);

  std::size_t slices_;
  double height_;
  std::vector<double> capacity_;  // [stream] [J/(m K)]
  NearGround ground_;
  std::vector<double> ambient_;
  std::vector<double> values_;         // [unknown][slice], unknowns as of Exchange
  std::vector<double> scratch_;        // the same
  std::vector<double> wall_heat_;      // [slice] since the ground was last warmed [J/m]
  std::vector<double> wall_;           // [slice]: ambient and theta
  std::vector<double> filled_, heat_;  // [stream]: of the slice before the first: part that is full, that part's heat
};

}  // namespace stillground::transit
