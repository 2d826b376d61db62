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
      work_(problem.groups.size() * 5 * problem.row()),
      wall_heat_(problem.groups.size() * problem.row()),
      offset_(problem.groups.size()) {
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const auto same = [&](std::size_t other) { return problem.groups[other].fraction == problem.groups[g].fraction; };
    const auto found = std::find_if(models_.begin(), models_.end(), same);
    shape_.push_back(static_cast<std::size_t>(found - models_.begin()));
    if (found == models_.end()) models_.push_back(g);
  }
}

const std::vector<BoreFactors>& StageSolver::factors(const FlowRegime& regime) {
  if (regime.serial == serial_) return bores_;
  bores_.clear();
  for (const std::size_t g : models_) bores_.emplace_back(problem_, problem_.groups[g], regime, radial_, kappa_);
  serial_ = regime.serial;
  return bores_;
}

void StageSolver::eliminate(std::size_t g, const BoreFactors& bore, const State& state, double time, double* y) {
  const std::size_t row = problem_.row();
  double* outside = ambient_.data() + g * row;
  ambient(problem_, state, time, g, undisturbed_, {outside, row});
  radial_.eliminate(y, y);
  offset_[g] = bore.eliminate(y, y, outside, {work_.data() + g * bore.work_size(), bore.work_size()});
}

loop::Meeting StageSolver::close(const std::vector<BoreFactors>& bores, const Task& task) const {
  if (task.regime->heat_rate <= 0) return {};
  loop::FieldResponse field{0, 0, task.regime->heat_rate * problem_.bores()};
  for (std::size_t g = 0; g < shape_.size(); ++g) {
    const double share = problem_.groups[g].members / problem_.bores();
    field.gain += share * bores[shape_[g]].gain();
    field.offset += share * offset_[g];
  }
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  return loop::meet(field, task.demand, problem_.pumps);
}

void StageSolver::substitute(std::size_t g, const BoreFactors& bore, double inlet, double* y) {
  double* heat = wall_heat_.data() + g * problem_.row();
  bore.substitute(inlet, y, y, {work_.data() + g * bore.work_size(), bore.work_size()}, heat);
  radial_.substitute(y);
}

}  // namespace stillground::march
