#pragma once

#include <vector>

#include "engine/march/growing_steps.hpp"
#include "engine/march/problem.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::validation {

/// What a bore's wall is held at.
enum class WallHeld {
  at_one_temperature,  ///< 0: ground that conducts and stores without bounds (1e9 W/(m K), 1e18 J/(m3 K))
  at_one_heat          ///< the same heat at every depth: ground of 0.001 W/(m K), 1000 times as resistive as the bore
};

/// A lone bore of one flow, marched by march::GrowingSteps from rest at 0 K until nothing changes any more, in few and
/// very long steps, with the engine's network, stage solver and choice of layers; ground that does not conduct
/// downwards, so that every layer stands for itself.
class SteadyBore {
 public:
  struct Make {
    double depth = 0;                     ///< [m]
    model::GridChoice grid;               ///< layers, as a scenario chooses them
    std::vector<bore::Network> networks;  ///< of equal passes, from the bore's top down in equal shares of its depth
    double heat_rate = 0;                 ///< mass flow times specific heat [W/K]
    WallHeld wall = WallHeld::at_one_temperature;
  };

  /// Marches to the steady state under 50 W/m.
  explicit SteadyBore(const Make& make);

  double inlet() const { return steps_.operating_point().lft; }   ///< [K]
  double outlet() const { return steps_.operating_point().eft; }  ///< [K]
  double heat() const { return heat_per_length * depth_; }        ///< [W]
  double mean_wall() const;                                       ///< over the depth [K]

  /// ((inlet + outlet)/2 - mean wall)/(heat per length) [K m/W].
  double effective_resistance() const;

  /// The streams where they pass from layer to layer.
  struct Passage {
    double depth = 0;  ///< below the bore's top [m]
    double down = 0;   ///< [K]
    double up = 0;     ///< [K]
  };

  /// Of one pass, from the bore's top to its toe: one more than layers.
  std::vector<Passage> passages(std::size_t pass = 0) const;

  /// The streams as a result records them, at the depths of the cells' centres.
  std::vector<Passage> recorded() const;

  /// Bore wall between each two passages [K].
  std::vector<double> walls() const;

  std::size_t layers() const { return problem_.groups[0].end - problem_.groups[0].first; }

  SteadyBore(const SteadyBore&) = delete;
  SteadyBore& operator=(const SteadyBore&) = delete;

 private:
  static constexpr double heat_per_length = 50;  // [W/m]; the problem is linear, any would do

  double depth_;
  march::Problem problem_;
  march::FlowRegime regime_;
  march::Forcing forcing_;
  march::GrowingSteps steps_;
};

}  // namespace stillground::validation
