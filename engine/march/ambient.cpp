#include "engine/march/ambient.hpp"

#include <algorithm>
#include <vector>

#include "engine/march/instruction_sets.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march {

namespace {

/// The layers with a bore in them, in whole lanes of a row.
struct Layers {
  std::size_t first = 0, width = 0;
};

Layers layers_with_bores(const Problem& problem) {
  std::size_t first = problem.nz(), end = 0;
  for (const Group& group : problem.groups) {
    first = std::min(first, group.first);
    end = std::max(end, group.end);
  }
  first = first / lane * lane;
  return {first, (end - first + lane - 1) / lane * lane};
}

/// Eight layers side by side.
using Lane = double __attribute__((vector_size(lane * sizeof(double)), aligned(64)));

/// sum[z] = sum over terms of weight * rows[(cell - first_cell) * sources + source][z]. Four lanes at a time stay in
/// registers over all terms. `rows`, `sum`: aligned to 64 bytes, `width` a multiple of a lane.
STILLGROUND_CLONED
void add_terms(std::span<const field::Coupling::Term> terms, std::size_t first_cell, std::size_t sources,
               const double* rows, std::size_t width, double* sum) {
  constexpr std::size_t four = 4 * lane;
  std::size_t k = 0;
  for (; k + four <= width; k += four) {
    Lane a{}, b{}, c{}, d{};
    for (const auto& term : terms) {
      const auto* row =
          reinterpret_cast<const Lane*>(rows + ((term.cell - first_cell) * sources + term.source) * width + k);
      a += term.weight * row[0];
      b += term.weight * row[1];
      c += term.weight * row[2];
      d += term.weight * row[3];
    }
    auto* to = reinterpret_cast<Lane*>(sum + k);
    to[0] = a;
    to[1] = b;
    to[2] = c;
    to[3] = d;
  }
  for (; k < width; k += lane) {
    Lane a{};
    for (const auto& term : terms) {
      a += term.weight *
           *reinterpret_cast<const Lane*>(rows + ((term.cell - first_cell) * sources + term.source) * width + k);
    }
    *reinterpret_cast<Lane*>(sum + k) = a;
  }
}

/// One shell's sums at the state's time, and how fast they changed since the last ones.
void form_shell(const Problem& problem, std::size_t number, const Layers& layers, State& state, Workers& workers) {
  const auto& shell = problem.coupling.shells()[number];
  const StateLayout layout(problem);
  const std::size_t groups = layout.groups, row = layout.row();
  // Side by side what is spread over the whole state: terms read it again and again.
  Vector rows((shell.end - shell.first) * groups * layers.width);
  workers.each(groups, [&](std::size_t g) {
    for (std::size_t cell = shell.first; cell < shell.end; ++cell) {
      const double* theta = state.y.data() + g * layout.block() + (layout.ground_row() + cell) * row + layers.first;
      std::copy(theta, theta + layers.width, rows.data() + ((cell - shell.first) * groups + g) * layers.width);
    }
  });
  const double since = state.time - state.shells_formed[number];
  workers.each(groups, [&](std::size_t a) {
    Vector now(layers.width);
    add_terms(problem.coupling.terms(a, shell), shell.first, groups, rows.data(), layers.width, now.data());
    double* sum = state.shell_sums.data() + (number * groups + a) * row + layers.first;
    double* rate = state.shell_rates.data() + (number * groups + a) * row + layers.first;
    for (std::size_t k = 0; k < layers.width; ++k) {
      rate[k] = since > 0 ? (now[k] - sum[k]) / since : 0.0;
      sum[k] = now[k];
    }
  });
  state.shells_formed[number] = state.time;
}

/// Half a step's slack: times are sums of steps.
bool due(const Multirate& multirate, double since, long every) {
  return since > static_cast<double>(every) * multirate.update_interval - multirate.step / 2;
}

/// The neighbours' sum of one group from its shells' at the state's time.
void add_shells(const Problem& problem, const Multirate& multirate, std::size_t a, State& state) {
  const std::size_t row = StateLayout(problem).row(), groups = problem.groups.size();
  double* now = state.neighbours.data() + a * row;
  double* before = state.neighbours_before.data() + a * row;
  std::fill(now, now + row, 0.0);
  std::fill(before, before + row, 0.0);
  for (std::size_t s = 0; s < state.shells_formed.size(); ++s) {
    const double* sum = state.shell_sums.data() + (s * groups + a) * row;
    const double* rate = state.shell_rates.data() + (s * groups + a) * row;
    const double since = state.time - state.shells_formed[s];
    for (std::size_t k = 0; k < row; ++k) {
      now[k] += sum[k] + since * rate[k];
      before[k] += sum[k] + (since - multirate.update_interval) * rate[k];
    }
  }
}

}  // namespace

void no_neighbours_yet(const Problem& problem, State& state) {
  const std::size_t rows = problem.groups.size() * StateLayout(problem).row(),
                    shells = problem.coupling.shells().size();
  state.neighbours.assign(rows, 0.0);
  state.neighbours_before = state.neighbours;
  state.shell_sums.assign(shells * rows, 0.0);
  state.shell_rates = state.shell_sums;
  state.shells_formed.assign(shells, 0.0);
}

void update_neighbours(const Problem& problem, const Multirate& multirate, State& state, Workers& workers) {
  const Layers layers = layers_with_bores(problem);
  const auto& shells = problem.coupling.shells();
  for (std::size_t s = 0; s < shells.size(); ++s) {
    const bool is_due = due(multirate, state.time - state.shells_formed[s], shells[s].every);
    if (shells[s].every == 1 || is_due) form_shell(problem, s, layers, state, workers);
  }
  workers.each(problem.groups.size(), [&](std::size_t a) { add_shells(problem, multirate, a, state); });
  state.updated = state.time;
}

bool update_due(const Problem& problem, const Multirate& multirate, const State& state) {
  return problem.bores() > 1 && due(multirate, state.time - state.updated, 1);
}

void ambient(const Problem& problem, const Multirate& multirate, const State& state, double time, std::size_t g,
             std::span<const double> undisturbed, std::span<double> result) {
  const std::size_t row = StateLayout(problem).row();
  const double ahead = (time - state.updated) / multirate.update_interval;
  const double* now = state.neighbours.data() + g * row;
  const double* before = state.neighbours_before.data() + g * row;
  for (std::size_t k = 0; k < problem.nz(); ++k) result[k] = undisturbed[k] + now[k] + ahead * (now[k] - before[k]);
  std::fill(result.begin() + static_cast<std::ptrdiff_t>(problem.nz()), result.end(), 0.0);
}

}  // namespace stillground::march
