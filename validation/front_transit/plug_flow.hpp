#pragma once

#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/stage.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::validation {

/// A lone U on the engine's own layers that exchanges nothing (1e15 K m/W), its fluid at 0 until from time 0 on fluid
/// at 1 enters: marched by the implicit part of ARS(2,2,2) through march::BoreElimination, whose inlet is given here
/// instead of by a loop.
class PlugFlow {
 public:
  /// `mass_flow` [kg/s] of fluid with `specific_heat` [J/(kg K)] and `density` [kg/m3]; `step` [s].
  struct Make {
    double depth = 0;           ///< [m]
    double inner_diameter = 0;  ///< [m]
    double mass_flow = 0;
    double specific_heat = 0;
    double density = 0;
    double step = 0;
  };
  explicit PlugFlow(const Make& make);

  /// One stage's value in the time-integrals of a march.
  struct Sample {
    double time = 0;    ///< [s]
    double weight = 0;  ///< of the stage [s]
    double outlet = 0;
  };

  /// Goes on by one step; its two stages are added to the samples.
  void step();

  const std::vector<Sample>& samples() const { return samples_; }
  double time() const { return time_; }

  double stored() const;                           ///< heat in the fluid above 0 [J]
  double heat_rate() const { return heat_rate_; }  ///< [W/K]
  std::size_t layers() const { return problem_.groups[0].end - problem_.groups[0].first; }
  std::vector<double> cell_times() const;  ///< time to fill each layer's stretch of one leg [s], from the top down

  PlugFlow(const PlugFlow&) = delete;
  PlugFlow& operator=(const PlugFlow&) = delete;

 private:
  void solve(march::Vector& y);
  double outlet(const march::Vector& y) const;

  march::Problem problem_;
  march::StateLayout layout_;
  double heat_rate_, capacity_, step_;
  march::FlowRegime regime_;
  march::RadialFactors radial_;
  march::BoreElimination bore_;
  march::Vector y_;
  std::vector<double> ambient_, work_, wall_heat_;
  std::vector<Sample> samples_;
  double time_ = 0;
};

}  // namespace stillground::validation
