#pragma once

#include <functional>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/transit/sliced_bore.hpp"

namespace stillground::transit {

/// How an hour is stepped. A step of fluid and nodes takes the fluid no farther than a slice, but for `least_step`.
struct Pace {
  double interval = 60;      ///< between two steps of the ground [s]
  double least_step = 0;     ///< of fluid and nodes [s]
  bool film_follows = true;  ///< the fluid's temperature; else it is that of the hour's start
  bool settles = false;  ///< fluid and grout were at rest: the ground takes what heat pumps give, not what they let by
};

/// What drives a circuit while fluid flows.
struct Drive {
  /// The flow regime at a mean temperature of the fluid [K]; holds until the next call.
  std::function<const march::FlowRegime&(double)> regime;
  /// What heat pumps give the fluid [W], `second` seconds on, at an EFT [K].
  std::function<double(double second, double eft)> heat;
};

/// One circuit of a field: a bore of median depth, or as many in series as the field has, each with ground of its own.
class Circuit {
 public:
  explicit Circuit(const assembly::Assembly& assembly);

  std::size_t bores() const { return bores_.size(); }

  /// In which fluid comes back [s]; `heat_rate`: its flow times heat capacity [W/K].
  double round_trip(double heat_rate) const;

  void set_ambient(double time, double warmer);  ///< `time` since the run's start [s]
  void shift(double warmer);

  /// The ground alone takes `heat` [W], even along all bores, for `interval` [s].
  void warm_ground(double interval, double heat);

  /// Fluid stands for an hour.
  void stand(const march::FlowRegime& regime, const Pace& pace);

  /// Fluid flows for `seconds`. Returns the mean EFT of each interval [K].
  std::vector<double> flow(const Drive& drive, const Pace& pace, double seconds);

  double fluid() const;  ///< mean temperature of the fluid [K]

 private:
  Exchanges exchanges(const march::FlowRegime& regime, double step) const;
  void pass(double amount, double entering);
  void warm_ground_by_walls(double interval);

  const assembly::Assembly* assembly_;
  SliceChoice choice_;
  double leg_amount_ = 0;      // of the leg that holds least [J/K]
  double circuit_amount_ = 0;  // [J/K]
  std::vector<SlicedBore> bores_;
};

}  // namespace stillground::transit
