#pragma once

#include <functional>
#include <string>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/march/growing_steps.hpp"
#include "engine/record/frames.hpp"
#include "validation/harness/ground_log.hpp"

namespace stillground::validation {

/// Bores in layered ground under constant heat from t = 0, assembled as for a run (own grid, layers, groups, coupling),
/// with one fluid temperature for all of them, one resistance to their walls and (nearly) no heat capacity inside them:
/// what finite-element reference solutions solve. Marched by march::GrowingSteps. All temperatures are rises above the
/// undisturbed ground [K].
class IsothermalField {
 public:
  struct Make {
    std::vector<model::Layer> layers;
    std::vector<model::BoreSite> bores;
    double radius = 0;      ///< of the bores [m]
    double resistance = 0;  ///< fluid to wall [K m/W]
    double heat = 0;        ///< of all bores [W]
    int years = 0;          ///< the run for which the engine chooses its grid
    model::GridChoice::Level level = model::GridChoice::Level::normal;
    double heat_rate = 1e8;  ///< of each bore's flow [W/K]; the preset is so much that the fluid has one temperature
    double internal = 1;     ///< R_a, between the streams [K m/W]
    int in_series = 1;       ///< bores on a circuit, in their order
    double heat_flow = 0;    ///< geothermal [W/m2]; temperatures are then rises above the surface's
  };

  explicit IsothermalField(const Make& make);

  /// Calls at(time) at each of `times` [s] (rising).
  void march(const std::vector<double>& times, const std::function<void(double)>& at);

  double fluid() const;
  double inlet() const;  ///< where the flow is less than plenty, that of all bores

  /// A bore's part of the field's heat where each has a fluid of its own between inlet and wall, whose streams exchange
  /// nothing: the mean of both stands at inlet - Q/(2 W) at all depths.
  double share_of_inlet(std::size_t bore) const;

  /// Bore wall at a depth within the bore: cubic through the four nearest cells of the same layer of the log, or as
  /// many as there are.
  double wall(std::size_t bore, double depth) const;
  double mean_wall(std::size_t bore) const;

  /// Depth and wall temperature of every layer of the grid with a bore in it.
  std::vector<std::pair<double, double>> wall_profile(std::size_t bore) const;

  /// Part of the field's heat that a bore gives off between two depths.
  double share(std::size_t bore, double from, double to) const;
  double share(std::size_t bore) const;

  /// Ground in plan position (x, y) at a depth: all bores' rises, interpolated in radius as neighbours are and over
  /// depth as the wall.
  double ground(double x, double y, double depth) const;

  IsothermalField(const IsothermalField&) = delete;
  IsothermalField& operator=(const IsothermalField&) = delete;

 private:
  double wall_of(std::size_t bore, std::size_t k) const;
  double at_depth(double depth, std::size_t first, std::size_t past,
                  const std::function<double(std::size_t)>& of_layer) const;

  Make make_;
  assembly::Assembly assembly_;
  march::FlowRegime regime_;
  march::Forcing forcing_;
  march::GrowingSteps steps_;
  record::Snapshot shot_;  // of the last time reached
};

}  // namespace stillground::validation
