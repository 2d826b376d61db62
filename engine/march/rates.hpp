#pragma once

#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

/// One hour's task for a stepper.
struct Task {
  loop::Demand demand;
  const FlowRegime* regime = nullptr;  ///< must outlive the hour
};

/// dy/dt of everything that the march treats implicitly (radial conduction, in-bore exchange, the streams, the
/// closure), in the form an ordinary integrator wants: the independent statement of what the stage solver solves, used
/// to check it and by reference integrators. `ambient`: [group][z] of row() entries each; `rate`: as y [K/s]. T_in
/// follows from the state's own EFT (the streams' mixed outlet).
void implicit_rate(const Problem& problem, const Task& task, const double* y, const double* ambient, double* rate);

/// Mixed temperature of the streams that leave the bores [K]; without flow the mean of the topmost standing fluid going
/// up.
double mixed_outlet(const Problem& problem, const double* y);

/// The same of the topmost cells of the downward streams: the standing fluid at the field's inlet [K].
double topmost_down(const Problem& problem, const double* y);

}  // namespace stillground::march
