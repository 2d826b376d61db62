#include "engine/simulation/group_deviation.hpp"

#include <algorithm>
#include <limits>
#include <vector>

#include "engine/field/layout.hpp"
#include "engine/field/superposition.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::simulation {

namespace {

/// Each group's own rise, mean over the layers as a bore of `reach` fills them: [group][ring].
std::vector<double> mean_rises(const march::Problem& problem, const march::Group& reach, const march::State& state,
                               march::Workers& workers) {
  std::vector<double> share(problem.nz(), 0.0);
  double length = 0;
  for (std::size_t k = reach.first; k < reach.end; ++k) length += share[k] = reach.fraction[k] * problem.grid.height(k);
  const march::StateLayout layout(problem);
  const std::size_t nr = problem.nr(), row = layout.row();
  std::vector<double> means(problem.groups.size() * nr);
  workers.each(problem.groups.size(), [&](std::size_t g) {
    for (std::size_t i = 0; i < nr; ++i) {
      const double* theta = state.y.data() + g * layout.block() + (layout.ground_row() + i) * row;
      double sum = 0;
      for (std::size_t k = reach.first; k < reach.end; ++k) sum += share[k] * theta[k];
      means[g * nr + i] = sum / length;
    }
  });
  return means;
}

/// Largest difference of a member's neighbours' sum from the mean over its group's members.
double deviation_of(const assembly::Assembly& assembly, const std::vector<std::size_t>& members,
                    const std::vector<double>& rises, const field::RadialReader& reader) {
  const std::size_t nr = assembly.problem.nr();
  double mean = 0, least = std::numeric_limits<double>::infinity(), most = -least;
  for (const std::size_t member : members) {
    double sum = 0;
    for (std::size_t other = 0; other < assembly.bores.size(); ++other) {
      if (other == member) continue;
      const double* rise = rises.data() + assembly.groups.of_bore[other] * nr;
      const auto weights = reader.weights(field::distance(assembly.bores[member], assembly.bores[other]));
      for (const auto& w : weights) sum += w.weight * rise[w.cell];
    }
    mean += sum / static_cast<double>(members.size());
    least = std::min(least, sum);
    most = std::max(most, sum);
  }
  return std::max(most - mean, mean - least);
}

}  // namespace

double group_deviation(const assembly::Assembly& assembly, const march::State& state, march::Workers& workers) {
  const march::Problem& problem = assembly.problem;
  const field::RadialReader reader(problem.grid.r);
  std::vector<double> deviation(problem.groups.size(), 0.0);
  std::vector<bool> done(problem.groups.size(), false);
  for (std::size_t first = 0; first < done.size(); ++first) {
    if (done[first]) continue;
    // All groups whose bores fill the same layers at once.
    std::vector<std::size_t> alike;
    for (std::size_t g = first; g < done.size(); ++g) {
      if (done[g] || problem.groups[g].fraction != problem.groups[first].fraction) continue;
      done[g] = true;
      if (assembly.groups.members[g].size() > 1) alike.push_back(g);
    }
    if (alike.empty()) continue;
    const auto rises = mean_rises(problem, problem.groups[first], state, workers);
    workers.each(alike.size(), [&](std::size_t i) {
      deviation[alike[i]] = deviation_of(assembly, assembly.groups.members[alike[i]], rises, reader);
    });
  }
  return *std::max_element(deviation.begin(), deviation.end());
}

}  // namespace stillground::simulation
