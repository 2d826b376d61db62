#include "engine/march/stage.hpp"

#include <algorithm>
#include <cmath>

#include "engine/base/errors.hpp"

namespace stillground::march {

StageSolver::StageSolver(const Problem& problem, double kappa, Workers& workers)
    : problem_(problem),
      kappa_(kappa),
      workers_(workers),
      radial_(problem, kappa),
      bores_(problem),
      undisturbed_(problem.nz()),
      blocks_(problem.groups.size()),
      ambient_(problem.groups.size() * problem.row()),
      work_(problem.groups.size() * BoreFactors::work_size(problem)),
      wall_heat_(problem.groups.size() * problem.row()),
      offset_(problem.groups.size()),
      gain_(problem.groups.size()) {}

void StageSolver::prepare(const Task& task) {
  bores_.prepare(task, [&](BoreFactors& bore, const Group& group, const FlowRegime& regime) {
    bore = BoreFactors(problem_, group, regime, radial_, kappa_);
  });
}

void StageSolver::eliminate(std::size_t g, const State& state, double time, double* y) {
  const std::size_t row = problem_.row();
  if (!bores_.of(g)) return;
  double* outside = ambient_.data() + g * row;
  ambient(problem_, state, time, g, undisturbed_, {outside, row});
  radial_.eliminate(y, y);
  offset_[g] = bores_.of(g)->eliminate(y, y, outside, work_of(g));
}

loop::Meeting StageSolver::close(const Task& task) {
  loop::FieldResponse field{0, 0, heat_rate(problem_, task)};
  if (field.heat_rate <= 0) return {};
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const Group& group = problem_.groups[g];
    if (!bores_.of(g)) continue;
    const double own = bores_.of(g)->gain();
    const bool first = group.upstream == Group::none;
    gain_[g] = own * (first ? 1.0 : gain_[group.upstream]);
    offset_[g] += first ? 0.0 : own * offset_[group.upstream];
    if (!group.returns) continue;
    const double share = group.members * task.of(g)->heat_rate / field.heat_rate;
    field.gain += share * gain_[g];
    field.offset += share * offset_[g];
  }
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  return loop::meet(field, task.demand, problem_.pumps);
}

void StageSolver::substitute(std::size_t g, double lft, double* y) {
  const Group& group = problem_.groups[g];
  double* heat = wall_heat_.data() + g * problem_.row();
  if (!bores_.of(g)) {  // neither bore nor heat: the ground's own rise stays zero
    std::fill(heat, heat + problem_.row(), 0.0);
    return;
  }
  const double inlet = group.upstream == Group::none ? lft : gain_[group.upstream] * lft + offset_[group.upstream];
  bores_.of(g)->substitute(inlet, y, y, work_of(g), heat);
  radial_.substitute(y);
}

}  // namespace stillground::march
