#pragma once

#include <cstddef>
#include <vector>

#include "engine/assembly/assembly.hpp"

namespace stillground::assembly {

/// Which groups of bores are there, and which of them work, as a run goes on; and how a flow divides among them.
class Phases {
 public:
  explicit Phases(const Assembly& assembly);

  /// Whether the group's bores are drilled in the hour that begins `time` seconds after the start.
  bool drilled(std::size_t group, double time) const { return time >= start_[group]; }

  /// Whether fluid is sent through them.
  bool works(std::size_t group, double time) const { return drilled(group, time) && time < stop_[group]; }

  /// Whether the group's bores are drilled in just that hour, after the run's start.
  bool opens(std::size_t group, double time) const { return time > 0 && time == start_[group]; }

  /// How much more flows through every bore that works than if all did: a flow given for the whole field divides among
  /// those that work. 1 where it is given for each bore.
  double concentration(double time) const;

  /// Full flow through one bore of the group at that concentration [kg/s].
  double full_flow(std::size_t group, double concentration) const {
    return assembly_.fluid.flow_per_bore * weight_[group] * concentration;
  }

  /// True where every group works from the start to the end and carries the same flow.
  bool all_alike() const { return all_alike_; }

  /// Groups of equal flow share a number, from 0.
  std::size_t flow_class(std::size_t group) const { return class_[group]; }

 private:
  const Assembly& assembly_;
  std::vector<double> start_, stop_, weight_;  // [group]
  std::vector<std::size_t> class_;
  bool all_alike_;
};

}  // namespace stillground::assembly
