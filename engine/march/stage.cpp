#include "engine/march/stage.hpp"

#include <algorithm>
#include <cmath>

#include "engine/base/errors.hpp"

namespace stillground::march {

StageSolver::StageSolver(const Problem& problem, const Multirate& multirate, double kappa, Workers& workers)
    : problem_(problem),
      multirate_(multirate),
      layout_(problem),
      kappa_(kappa),
      workers_(workers),
      radial_(problem, kappa),
      bores_(problem),
      undisturbed_(problem.nz()),
      blocks_(layout_.groups),
      ambient_(layout_.groups * layout_.row()),
      work_(layout_.groups * BoreElimination::work_size(layout_)),
      wall_heat_(layout_.groups * layout_.row()),
      circuits_({problem.groups.begin(), problem.groups.end()}),
      gain_(layout_.groups),
      offset_(layout_.groups),
      heat_rate_(layout_.groups) {}

void StageSolver::prepare(const Forcing& forcing) {
  bores_.prepare(forcing, [&](BoreElimination& bore, const Group& group, const FlowRegime& regime) {
    bore = BoreElimination(problem_, group, regime, radial_, kappa_);
  });
}

void StageSolver::eliminate(std::size_t g, const State& state, double time, double* y) {
  const std::size_t row = layout_.row();
  if (!bores_.of(g)) return;
  double* outside = ambient_.data() + g * row;
  ambient(problem_, multirate_, state, time, g, undisturbed_, {outside, row});
  radial_.eliminate(y, y);
  offset_[g] = bores_.of(g)->eliminate(y, y, outside, work_of(g));
}

/// T_out,g = gain_g T_in,g + offset_g of every group; EFT = gain T_in + offset of the field; T_in = EFT + Q(EFT)/W.
loop::OperatingPoint StageSolver::close(const Forcing& forcing) {
  if (heat_rate(problem_, forcing) <= 0) return {};
  for (std::size_t g = 0; g < layout_.groups; ++g) {
    heat_rate_[g] = bores_.of(g) ? forcing.of(g)->heat_rate : 0.0;
    gain_[g] = bores_.of(g) ? bores_.of(g)->gain() : 0.0;
  }
  circuits_.set_gains(gain_, heat_rate_);
  const loop::FieldOutlet field = circuits_.set_offsets(offset_);
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  return loop::operating_point(field, forcing.demand, problem_.pumps);
}

void StageSolver::substitute(std::size_t g, double lft, double* y) {
  double* heat = wall_heat_.data() + g * layout_.row();
  if (!bores_.of(g)) {  // neither bore nor heat: the ground's own rise stays zero
    std::fill(heat, heat + layout_.row(), 0.0);
    return;
  }
  bores_.of(g)->substitute(circuits_.inlet(g, lft), y, y, work_of(g), heat);
  radial_.substitute(y);
}

}  // namespace stillground::march
