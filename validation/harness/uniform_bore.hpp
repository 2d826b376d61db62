#pragma once

#include <functional>
#include <vector>

#include "engine/ground/grid.hpp"
#include "engine/march/growing_steps.hpp"
#include "engine/march/problem.hpp"

namespace stillground::validation {

/// A lone bore in ground of one kind, undisturbed at zero, without heat pump, with steps of 1 s: for marches by a clock
/// of their own. `others`: bores whose ends the layers resolve as well.
march::Problem lone_bore(const ground::GridSpec& spec, const model::Solid& solid, const ground::DepthInterval& reach,
                         std::vector<ground::DepthInterval> others = {});

/// A lone bore that gives off the same heat at every depth into ground at zero: what line and cylinder sources
/// describe. Made from the engine's own parts by a network so resistive (1000 K m/W, hardly any capacity) that the
/// ground's answer, of the order of 1 K m/W, changes the heat along the bore by no more than 0.1 %.
class UniformBore {
 public:
  /// `others`: bores whose ends the layers resolve as well.
  UniformBore(const ground::GridSpec& spec, const model::Solid& solid, const ground::DepthInterval& reach,
              const std::vector<ground::DepthInterval>& others = {});

  /// Marches by ARS(2,2,2) with steps that grow with time, and calls at(time) at each of `times` [s] (rising), hit
  /// exactly.
  void march(const std::vector<double>& times, double first_step, double longest_step,
             const std::function<void(double)>& at);

  /// Rise over the heat per length [K m/W], mean over the bore's depth: at the bore wall, or at `distance` [m] from the
  /// axis (interpolated as neighbours are).
  double at_wall() const;
  double at_distance(double distance) const;

  /// The same, mean over another bore's depth, which is weighted by the parts of the layers that it fills.
  double at_distance(double distance, const ground::DepthInterval& other) const;

  /// The same in one layer of the grid.
  double at_wall(std::size_t k) const;
  double at_distance(double distance, std::size_t k) const;

  const march::Problem& problem() const { return problem_; }

  UniformBore(const UniformBore&) = delete;
  UniformBore& operator=(const UniformBore&) = delete;

 private:
  double mean(const std::function<double(std::size_t)>& of_layer) const;

  march::Problem problem_;
  march::FlowRegime regime_;
  march::Forcing forcing_;
  march::GrowingSteps steps_;
};

}  // namespace stillground::validation
