#pragma once

#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

/// One hour's forcing for a stepper.
struct Forcing {
  loop::Demand demand;
  const FlowRegime* regime = nullptr;  ///< of every group; must outlive the hour
  /// [group], where they differ; nullptr: the group's bores are not drilled yet. Empty: all as `regime`. A group has
  /// the heat rate of the one upstream of it.
  std::vector<const FlowRegime*> own = {};

  const FlowRegime* of(std::size_t group) const { return own.empty() ? regime : own[group]; }
};

/// Mass flow times specific heat of the whole field [W/K]; 0 for stagnant fluid.
double heat_rate(const Problem& problem, const Forcing& forcing);

/// What enters the field's first bores [K]: the heat pumps' outlet, from the state's own EFT; 0 for stagnant fluid.
double field_inlet(const Problem& problem, const Forcing& forcing, const double* y);

/// What enters a group's bores [K], `field` as field_inlet gives it.
double inlet_of(const Problem& problem, std::size_t group, double field, const double* y);

/// The streams in the middle of layer k of a group's bore [K]. A layer takes the same from its fluid all along, so that
/// the fluid's temperature is linear in it: the mean of inlet and outlet. Standing fluid has one temperature in it.
/// `block`: the group's; `heat_rate`: of its bore [W/K].
bore::PerStream streams_in_middle(const Problem& problem, const Group& group, double heat_rate, double inlet,
                                  const double* block, std::size_t k);

/// dy/dt of everything that the march treats implicitly (radial conduction, in-bore exchange, the streams, the
/// closure), in the form an ordinary integrator wants: the independent statement of what the stage solver solves, used
/// to check it and by reference integrators. `ambient`: [group][z] of row() entries each; `rate`: as y [K/s]. T_in
/// follows from the state's own EFT (the streams' mixed outlet).
void implicit_rate(const Problem& problem, const Forcing& forcing, const double* y, const double* ambient,
                   double* rate);

/// Mixed temperature of the streams that come back from the field [K]; without flow the mean of the topmost stagnant
/// fluid going up.
double mixed_outlet(const Problem& problem, const Forcing& forcing, const double* y);

/// The same of the topmost cells of the downward streams: the stagnant fluid at the field's inlet [K].
double topmost_down(const Problem& problem, const Forcing& forcing, const double* y);

/// A group's fluid: metres of bore, and the mean temperature of what goes down and up there times them [K m].
struct Fluid {
  double length = 0;
  double sum = 0;
};
Fluid fluid_of(const Problem& problem, std::size_t group, const double* block);

/// Mean temperature of the fluid in the loops of the groups for which `drilled(g)` [K]; `of(g)` is their Fluid. Summed
/// in one order, so that a stepper that has its groups' parts finds the very same.
template <class Drilled, class Of>
double mean_fluid(std::size_t groups, Drilled&& drilled, Of&& of) {
  Fluid all;
  for (std::size_t g = 0; g < groups; ++g) {
    if (!drilled(g)) continue;
    const Fluid fluid = of(g);
    all.length += fluid.length;
    all.sum += fluid.sum;
  }
  return all.sum / all.length;
}

}  // namespace stillground::march
