#include "engine/march/fused/stepper.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/march/fused/bore_line.hpp"
#include "engine/march/fused/rings.hpp"
#include "engine/march/made_for_bores.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march {

namespace {

using fused::BoreLine;
using fused::Rings;
using fused::side_by_side;

/// An hour as all threads see it.
struct Hour {
  State& state;
  const Task& task;
  Vector& wall_heat;
  double heat_rate = 0;  ///< of the whole field [W/K]
  double gain = 0;       ///< of the whole field
};

bool ends_a_day(double hour_start) {
  return std::lround((hour_start + seconds_per_hour) / seconds_per_hour) % 24 == 0;
}

class FusedStepper final : public Stepper {
 public:
  FusedStepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels);
  HourMeans advance(State& state, const Task& task, Vector& wall_heat) override;

 private:
  using Pair = std::array<double, 2>;

  /// Groups [from, past), at most side_by_side of them, that go up and down the bore together.
  struct Batch {
    std::size_t from, past;
  };

  static std::vector<Batch> batches(std::size_t groups, std::size_t threads);
  Hour prepare(State& state, const Task& task, Vector& wall_heat);
  void march(const Hour& hour);
  void end_hour(const Hour& hour, const Batch& batch);
  void inwards(const Hour& hour, std::size_t stage, const Batch& batch);
  void outwards(const Hour& hour, std::size_t stage, const Batch& batch);
  void finish(const Hour& hour, std::size_t stage, std::size_t g);
  void lose(const Rings& rings, std::size_t g, double part, const double* y);
  loop::Meeting close(const Hour& hour);
  void collect(const Hour& hour, std::size_t stage);
  void collect_standing();
  void slow_clock(State& state, std::size_t group);

  double* block(State& state, std::size_t g) const { return state.y.data() + g * problem_.block(); }
  double* first_stage(std::size_t g) { return first_stage_.data() + g * stage_block_; }
  double* work(std::size_t g) { return work_.data() + g * work_block_; }
  std::size_t ground() const { return problem_.ground_row() * problem_.row(); }
  double stage_time(const State& state, std::size_t stage) const {
    return state.time + problem_.step * (static_cast<double>(stage / 2) + ars222::c[1 + stage % 2]);
  }

  const Problem& problem_;
  Workers& workers_;
  const fused::Kernels& kernels_;
  std::size_t bore_kernel_;  // which of the kernels' pairs
  std::size_t stages_;       // of an hour
  Rings fast_;
  std::optional<Rings> slow_;
  Vector seam_;  // conductance through the seam [z]
  MadeForBores<BoreLine> bores_;
  std::size_t stage_block_, work_block_;
  Vector first_stage_;  // [group]: the fast clock's rings
  Vector work_;         // [group]
  Vector undisturbed_;  // [stage of the hour][z]
  Vector zero_;         // [z]
  Vector slow_stage_;   // [group]: first stage of the slow clock's rings
  std::vector<Pair> up_;
  std::vector<double> offset_;                  // [group]: outlet at an inlet of 0, of this stage
  std::vector<double> share_;                   // [group]: of the field's outlet
  std::vector<double> chain_gain_;              // [group]: outlet per inlet of the field
  std::vector<Fluid> fluid_;                    // [group]: at the hour's end
  std::vector<double> surface_;                 // [group]: heat lost in this hour [J]
  std::array<std::vector<double>, 2> topmost_;  // [down, up][group]: hour's mean of standing fluid
  std::vector<double> outlets_;                 // [group]: outlet at a field's inlet of 0, of this stage
  loop::Meeting meeting_;                       // of this stage
  std::vector<Batch> batches_;
  HourMeans sums_;
};

std::size_t fast_rings(const Problem& problem) {
  return problem.clocks.two() ? problem.clocks.buffer_end : problem.nr();
}

FusedStepper::FusedStepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels)
    : problem_(problem),
      workers_(workers),
      kernels_(kernels),
      bore_kernel_(problem.passes - 1),
      stages_(2 * static_cast<std::size_t>(std::lround(seconds_per_hour / problem.step))),
      fast_(problem, problem.step, {0, fast_rings(problem)}, problem.clocks.two() ? problem.clocks.seam : problem.nr(),
            kernels.lanes),
      bores_(problem),
      stage_block_(fast_rings(problem) * problem.row()),
      work_block_(fused::work_rows(problem.streams()) * problem.row()),
      first_stage_(problem.groups.size() * stage_block_),
      work_(problem.groups.size() * work_block_),
      undisturbed_(stages_ * problem.row()),
      zero_(problem.row()),
      up_(problem.groups.size()),
      offset_(problem.groups.size()),
      share_(problem.groups.size()),
      chain_gain_(problem.groups.size()),
      fluid_(problem.groups.size()),
      surface_(problem.groups.size()),
      topmost_{std::vector<double>(problem.groups.size()), std::vector<double>(problem.groups.size())},
      outlets_(problem.groups.size()),
      batches_(batches(problem.groups.size(), static_cast<std::size_t>(workers.threads()))) {
  if (!problem.clocks.two()) return;
  const std::size_t seam = problem.clocks.seam;
  slow_.emplace(problem, seconds_per_day / problem.clocks.slow_steps, RingRange{seam, problem.nr()}, problem.nr(),
                kernels.lanes);
  slow_stage_.assign(problem.groups.size() * (problem.nr() - seam) * problem.row(), 0.0);
  seam_.assign(problem.row(), 0.0);
  const double unit = unit_conductance(problem.grid, seam - 1);
  for (std::size_t k = 0; k < problem.nz(); ++k) seam_[k] = unit * problem.grid.solid[k].conductivity;
}

/// Batches of nearly equal size, as many for each thread. Which groups go side by side changes no bit.
std::vector<FusedStepper::Batch> FusedStepper::batches(std::size_t groups, std::size_t threads) {
  const std::size_t rounds = (groups + side_by_side * threads - 1) / (side_by_side * threads);
  const std::size_t count = std::min(groups, rounds * threads);
  std::vector<Batch> result;
  for (std::size_t b = 0; b < count; ++b) result.push_back({groups * b / count, groups * (b + 1) / count});
  return result;
}

Hour FusedStepper::prepare(State& state, const Task& task, Vector& wall_heat) {
  bores_.prepare(task, [&](BoreLine& line, const Group& group, const FlowRegime& regime) {
    line.make(problem_, group, regime, fast_.radial(), ars222::gamma * problem_.step);
  });
  for (std::size_t stage = 0; stage < stages_; ++stage) {
    problem_.undisturbed.at(stage_time(state, stage), {undisturbed_.data() + stage * problem_.row(), problem_.nz()});
  }
  Hour hour{state, task, wall_heat, heat_rate(problem_, task), 0};
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const Group& group = problem_.groups[g];
    share_[g] = chain_gain_[g] = 0;
    if (!bores_.of(g) || hour.heat_rate <= 0) continue;
    chain_gain_[g] = bores_.of(g)->gain() * (group.upstream == Group::none ? 1.0 : chain_gain_[group.upstream]);
    if (group.returns) share_[g] = group.members * task.of(g)->heat_rate / hour.heat_rate;
    hour.gain += share_[g] * chain_gain_[g];
  }
  std::fill(surface_.begin(), surface_.end(), 0.0);
  for (auto& means : topmost_) std::fill(means.begin(), means.end(), 0.0);
  return hour;
}

HourMeans FusedStepper::advance(State& state, const Task& task, Vector& wall_heat) {
  sums_ = {};
  const Hour hour = prepare(state, task, wall_heat);
  march(hour);
  if (hour.heat_rate <= 0) collect_standing();
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    sums_.surface += problem_.groups[g].members * surface_[g] / seconds_per_hour;
  }
  sums_.fluid = mean_fluid(
      problem_.groups.size(), [&](std::size_t g) { return bores_.of(g) != nullptr; },
      [&](std::size_t g) { return fluid_[g]; });
  state.time += seconds_per_hour;
  return sums_;
}

void FusedStepper::march(const Hour& hour) {
  const std::size_t last = stages_;  // phases: the first only inwards, the last only outwards
  workers_.in_phases(
      last + 1, batches_.size(),
      [&](std::size_t phase, std::size_t which) {
        const Batch& batch = batches_[which];
        if (phase > 0) outwards(hour, phase - 1, batch);
        if (phase < last) {
          inwards(hour, phase, batch);
        } else {
          end_hour(hour, batch);
        }
      },
      [&](std::size_t phase) {
        if (phase == last) return;
        meeting_ = close(hour);
        collect(hour, phase);
      });
}

void FusedStepper::end_hour(const Hour& hour, const Batch& batch) {
  const bool day_ends = slow_ && ends_a_day(hour.state.time);
  for (std::size_t g = batch.from; g < batch.past; ++g) {
    if (!bores_.of(g)) continue;
    fluid_[g] = fluid_of(problem_, g, block(hour.state, g));
    if (day_ends) slow_clock(hour.state, g);
  }
}

void FusedStepper::inwards(const Hour& hour, std::size_t stage, const Batch& batch) {
  const std::size_t row = problem_.row(), step_stage = stage % 2;
  std::array<const fused::BoreFactors*, side_by_side> bores{};
  std::array<double*, side_by_side> works{};
  std::array<std::size_t, side_by_side> groups{};
  Pair up[side_by_side] = {};
  std::size_t count = 0;
  for (std::size_t g = batch.from; g < batch.past; ++g) {
    const BoreLine* line = bores_.of(g);
    if (!line) continue;
    double *y = block(hour.state, g), *first = first_stage(g);
    const double* beyond = slow_ ? y + ground() + problem_.clocks.buffer_end * row : zero_.data();
    if (step_stage == 0) {
      lose(fast_, g, 1 - ars222::gamma, y + ground());
      kernels_.first_inwards(fast_.factors(), y + ground(), beyond, first);
    } else {
      kernels_.second_inwards(fast_.factors(), y + ground(), first, beyond);
    }
    const fused::Outside outside{undisturbed_.data() + stage * row, hour.state.neighbours.data() + g * row,
                                 hour.state.neighbours_before.data() + g * row,
                                 (stage_time(hour.state, stage) - hour.state.refreshed) / problem_.refresh};
    const double* innermost = step_stage == 0 ? first : y + ground();
    kernels_.bore_rest[bore_kernel_](line->factors(), y, outside, innermost, work(g));
    bores[count] = &line->factors();
    works[count] = work(g);
    groups[count++] = g;
  }
  kernels_.bore_upwards[bore_kernel_](count, bores.data(), works.data(), up[0].data());
  for (std::size_t b = 0; b < count; ++b) {
    up_[groups[b]] = up[b];
    offset_[groups[b]] = bores_.of(groups[b])->outlet(up[b]);
  }
}

loop::Meeting FusedStepper::close(const Hour& hour) {
  loop::FieldResponse field{hour.gain, 0, hour.heat_rate};
  if (field.heat_rate <= 0) return {};
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const BoreLine* line = bores_.of(g);
    if (!line) continue;
    const std::size_t upstream = problem_.groups[g].upstream;
    outlets_[g] = offset_[g];
    if (upstream != Group::none) outlets_[g] += line->gain() * outlets_[upstream];
    field.offset += share_[g] * outlets_[g];
  }
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  return loop::meet(field, hour.task.demand, problem_.pumps);
}

void FusedStepper::outwards(const Hour& hour, std::size_t stage, const Batch& batch) {
  std::array<const fused::BoreFactors*, side_by_side> bores{};
  std::array<double*, side_by_side> works{};
  std::array<std::size_t, side_by_side> groups{};
  Pair inlets[side_by_side] = {};
  std::size_t count = 0;
  for (std::size_t g = batch.from; g < batch.past; ++g) {
    const BoreLine* line = bores_.of(g);
    if (!line) continue;
    const std::size_t upstream = problem_.groups[g].upstream;
    const double inlet =
        upstream == Group::none ? meeting_.lft : chain_gain_[upstream] * meeting_.lft + outlets_[upstream];
    inlets[count] = line->inlets(inlet, up_[g]);
    bores[count] = &line->factors();
    works[count] = work(g);
    groups[count++] = g;
  }
  kernels_.bore_downwards[bore_kernel_](count, bores.data(), works.data(), inlets[0].data());
  for (std::size_t b = 0; b < count; ++b) finish(hour, stage, groups[b]);
}

void FusedStepper::finish(const Hour& hour, std::size_t stage, std::size_t g) {
  const std::size_t row = problem_.row();
  const double seconds = problem_.step * ars222::implicit_weight[1 + stage % 2];
  double *y = block(hour.state, g), *theta = y + ground(), *first = first_stage(g),
         *heat = hour.wall_heat.data() + g * row;
  const fused::RingFactors& rings = fast_.factors();
  fused::Crossing crossing;
  if (slow_) crossing = {problem_.clocks.seam, seconds, seam_.data(), hour.state.seam_heat.data() + g * row};
  const auto bore = kernels_.bore_finish[bore_kernel_];
  if (stage % 2 == 0) {
    bore(bores_.of(g)->factors(), work(g), seconds, rings.old, rings.fresh, y, first, heat);
    kernels_.first_outwards(rings, crossing, theta, first);
    lose(fast_, g, 1, first);
  } else {
    bore(bores_.of(g)->factors(), work(g), seconds, 0, 1, y, theta, heat);
    kernels_.second_outwards(rings, crossing, theta);
  }
  if (hour.heat_rate > 0) return;
  const double share = seconds / seconds_per_hour;
  const double* streams = work(g) + row + problem_.groups[g].first;
  topmost_[0][g] += share * streams[problem_.down_row() * row];
  topmost_[1][g] += share * streams[problem_.up_row(problem_.passes - 1) * row];
}

/// Through the surface goes what the explicit weights make of stages 0 and 1, y and Y:
///   delta L(y) + (1 - delta) L(Y) = (1 - gamma) L(y) + L(what first_outwards leaves of y and Y).
void FusedStepper::lose(const Rings& rings, std::size_t g, double part, const double* y) {
  surface_[g] += part * rings.step() * rings.surface_loss(y);
}

void FusedStepper::collect(const Hour& hour, std::size_t stage) {
  const double share = problem_.step / seconds_per_hour * ars222::implicit_weight[1 + stage % 2];
  sums_.eft += share * meeting_.eft;
  sums_.lft += share * meeting_.lft;
  sums_.power += share * meeting_.power;
  sums_.to_ground += share * hour.heat_rate * (meeting_.lft - meeting_.eft);
}

void FusedStepper::collect_standing() {
  double going = 0, coming = 0, outlets = 0, inlets = 0;
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const Group& group = problem_.groups[g];
    if (!bores_.of(g)) continue;
    if (group.upstream == Group::none) {
      going += group.members * topmost_[0][g];
      inlets += group.members;
    }
    if (group.returns) {
      coming += group.members * topmost_[1][g];
      outlets += group.members;
    }
  }
  sums_.lft = going / inlets;
  sums_.eft = coming / outlets;
}

void FusedStepper::slow_clock(State& state, std::size_t group) {
  const std::size_t row = problem_.row(), buffer = (problem_.clocks.buffer_end - problem_.clocks.seam) * row;
  double* y = block(state, group) + ground() + problem_.clocks.seam * row;
  double* first = slow_stage_.data() + group * slow_->factors().rings * row;
  double* kept = state.under_buffer.data() + group * buffer;
  double* heat = state.seam_heat.data() + group * row;
  const fused::RingFactors& rings = slow_->factors();
  const double* response = slow_->radial().wall_response().data();
  std::copy(kept, kept + buffer, y);
  for (int step = 0; step < problem_.clocks.slow_steps; ++step) {
    lose(*slow_, group, 1 - ars222::gamma, y);
    kernels_.first_inwards(rings, y, zero_.data(), first);
    kernels_.add_heat(row, response, 1 / seconds_per_day, heat, first);
    kernels_.first_outwards(rings, {}, y, first);
    lose(*slow_, group, 1, first);
    kernels_.second_inwards(rings, y, first, zero_.data());
    kernels_.add_heat(row, response, 1 / seconds_per_day, heat, y);
    kernels_.second_outwards(rings, {}, y);
  }
  std::copy(y, y + buffer, kept);
  std::fill(heat, heat + row, 0.0);
}

}  // namespace

std::unique_ptr<Stepper> make_fused_stepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels) {
  return std::make_unique<FusedStepper>(problem, workers, kernels);
}

}  // namespace stillground::march
