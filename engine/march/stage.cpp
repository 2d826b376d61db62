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
      undisturbed_(problem.nz()),
      blocks_(problem.groups.size()),
      ambient_(problem.groups.size() * problem.row()),
      work_(problem.groups.size() * BoreFactors::work_size(problem)),
      wall_heat_(problem.groups.size() * problem.row()),
      offset_(problem.groups.size()),
      gain_(problem.groups.size()) {
  std::vector<std::size_t> models;  // [shape]: a group of that shape
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const auto same = [&](std::size_t other) { return problem.groups[other].fraction == problem.groups[g].fraction; };
    const auto found = std::find_if(models.begin(), models.end(), same);
    shape_.push_back(static_cast<std::size_t>(found - models.begin()));
    if (found == models.end()) models.push_back(g);
  }
}

void StageSolver::prepare(const Task& task) {
  std::vector<Made> kept;
  bores_.assign(problem_.groups.size(), nullptr);
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const FlowRegime* regime = task.of(g);
    if (!regime) continue;
    const auto same = [&](const Made& one) {
      return one.factors && one.shape == shape_[g] && one.serial == regime->serial;
    };
    auto found = std::find_if(kept.begin(), kept.end(), same);
    if (found == kept.end()) {
      const auto before = std::find_if(made_.begin(), made_.end(), same);
      kept.push_back(before != made_.end()
                         ? std::move(*before)
                         : Made{shape_[g], regime->serial,
                                std::make_unique<BoreFactors>(problem_, problem_.groups[g], *regime, radial_, kappa_)});
      found = kept.end() - 1;
    }
    bores_[g] = found->factors.get();
  }
  made_ = std::move(kept);
}

void StageSolver::eliminate(std::size_t g, const State& state, double time, double* y) {
  const std::size_t row = problem_.row();
  if (!bores_[g]) return;
  double* outside = ambient_.data() + g * row;
  ambient(problem_, state, time, g, undisturbed_, {outside, row});
  radial_.eliminate(y, y);
  offset_[g] = bores_[g]->eliminate(y, y, outside, work_of(g));
}

loop::Meeting StageSolver::close(const Task& task) {
  loop::FieldResponse field{0, 0, heat_rate(problem_, task)};
  if (field.heat_rate <= 0) return {};
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const Group& group = problem_.groups[g];
    if (!bores_[g]) continue;
    const double own = bores_[g]->gain();
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
  if (!bores_[g]) return;  // neither bore nor heat: the ground's own rise stays zero
  const double inlet = group.upstream == Group::none ? lft : gain_[group.upstream] * lft + offset_[group.upstream];
  bores_[g]->substitute(inlet, y, y, work_of(g), heat);
  radial_.substitute(y);
}

}  // namespace stillground::march
