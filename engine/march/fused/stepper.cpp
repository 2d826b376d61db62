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
};

bool ends_a_day(double hour_start) {
  return std::lround((hour_start + seconds_per_hour) / seconds_per_hour) % 24 == 0;
}

/// Asks for a regime that another core has just made, all of it at once: line by line each would be waited for.
void fetch(const FlowRegime* regime) {
#if defined(__GNUC__)
  if (!regime) return;
  const auto lines = [](const void* from, std::size_t bytes) {
    for (std::size_t at = 0; at < bytes; at += 64) __builtin_prefetch(static_cast<const char*>(from) + at);
  };
  lines(regime->networks.data(), regime->networks.size() * sizeof(bore::Network));
  lines(regime->of_layer.data(), regime->of_layer.size() * sizeof(std::size_t));
#endif
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

  /// What each thread has for itself, found by the same sums in the same order: to work it out again is quicker than to
  /// fetch it from another core.
  struct Own {
    std::size_t from = 0, past = 0;  // its groups
    std::vector<Batch> batches;      // the same
    MadeForBores<BoreLine> bores;    // of its groups
    Vector undisturbed;              // [stage of the hour][z]
    std::vector<double> share;       // [group]: of the field's outlet
    std::vector<double> chain_gain;  // [group]: outlet per inlet of the field
    std::vector<double> outlets;     // [group]: outlet at a field's inlet of 0, of this stage
    double gain = 0;                 // of the whole field
    loop::Meeting meeting;           // of this stage
  };

  /// What a group's own thread writes: a cache line each.
  struct alignas(64) Group {
    Pair up = {};        // what each pass brings up at inlets of 0
    double surface = 0;  // heat lost in this hour [J]
    Pair topmost = {};   // hour's mean of standing fluid, going down and coming up
    Fluid fluid;         // at the hour's end
  };

  Own make_own(std::size_t thread) const;
  void march(const Hour& hour, Workers::Crew& crew);
  void prepare(const Hour& hour, Own& own);
  void sum_gains(const Hour& hour, Own& own) const;
  void end_hour(const Hour& hour, const Own& own);
  void inwards(const Hour& hour, std::size_t stage, const Own& own, const Batch& batch);
  void outwards(const Hour& hour, std::size_t stage, const Own& own, const Batch& batch);
  void finish(const Hour& hour, std::size_t stage, const BoreLine& line, std::size_t g);
  void lose(const Rings& rings, std::size_t g, double part, const double* y);
  loop::Meeting close(const Hour& hour, std::size_t stage, Own& own) const;
  void collect(const Hour& hour, std::size_t stage, const loop::Meeting& meeting);
  void collect_standing(const Hour& hour);
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
  std::size_t stage_block_, work_block_;
  Vector first_stage_;             // [group]: the fast clock's rings
  Vector work_;                    // [group]
  Vector zero_;                    // [z]
  Vector slow_stage_;              // [group]: first stage of the slow clock's rings
  std::vector<Own> own_;           // [thread]
  std::vector<std::size_t> slot_;  // [group]: of offset_ and gain_; no two threads write to one cache line
  std::array<Vector, 2> offset_;   // [stage of the step][slot]: outlet at an inlet of 0
  Vector gain_;                    // [slot]: outlet per inlet
  std::vector<Group> groups_;      // [group]
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
      stage_block_(fast_rings(problem) * problem.row()),
      work_block_(fused::work_rows(problem.streams()) * problem.row()),
      first_stage_(problem.groups.size() * stage_block_),
      work_(problem.groups.size() * work_block_),
      zero_(problem.row()),
      groups_(problem.groups.size()) {
  const auto threads = static_cast<std::size_t>(workers.threads());
  for (std::size_t thread = 0; thread < threads; ++thread) {
    own_.push_back(make_own(thread));
    const std::size_t first = (slot_.empty() ? 0 : slot_.back() + lane) / lane * lane;
    for (std::size_t g = own_.back().from; g < own_.back().past; ++g) slot_.push_back(first + g - own_.back().from);
  }
  const std::size_t slots = slot_.back() + lane;
  offset_ = {Vector(slots), Vector(slots)};
  gain_.assign(slots, 0.0);
  if (!problem.clocks.two()) return;
  const std::size_t seam = problem.clocks.seam;
  slow_.emplace(problem, seconds_per_day / problem.clocks.slow_steps, RingRange{seam, problem.nr()}, problem.nr(),
                kernels.lanes);
  slow_stage_.assign(problem.groups.size() * (problem.nr() - seam) * problem.row(), 0.0);
  seam_.assign(problem.row(), 0.0);
  const double unit = unit_conductance(problem.grid, seam - 1);
  for (std::size_t k = 0; k < problem.nz(); ++k) seam_[k] = unit * problem.grid.solid[k].conductivity;
}

/// A thread's groups, in batches of nearly equal size: which of them go side by side changes no bit.
FusedStepper::Own FusedStepper::make_own(std::size_t thread) const {
  const std::size_t all = problem_.groups.size();
  const auto [from, past] = workers_.part(all, thread);
  Own own{from,
          past,
          {},
          MadeForBores<BoreLine>(problem_),
          Vector(stages_ * problem_.row()),
          std::vector<double>(all),
          std::vector<double>(all),
          std::vector<double>(all),
          0,
          {}};
  const std::size_t count = (past - from + side_by_side - 1) / side_by_side;
  for (std::size_t b = 0; b < count; ++b) {
    own.batches.push_back({from + (past - from) * b / count, from + (past - from) * (b + 1) / count});
  }
  return own;
}

HourMeans FusedStepper::advance(State& state, const Task& task, Vector& wall_heat) {
  sums_ = {};
  const Hour hour{state, task, wall_heat, heat_rate(problem_, task)};
  workers_.together([&](Workers::Crew& crew) { march(hour, crew); });
  if (hour.heat_rate <= 0) collect_standing(hour);
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    if (task.of(g)) sums_.surface += problem_.groups[g].members * groups_[g].surface / seconds_per_hour;
  }
  sums_.fluid = mean_fluid(
      problem_.groups.size(), [&](std::size_t g) { return task.of(g) != nullptr; },
      [&](std::size_t g) { return groups_[g].fluid; });
  state.time += seconds_per_hour;
  return sums_;
}

void FusedStepper::march(const Hour& hour, Workers::Crew& crew) {
  Own& own = own_[crew.index()];
  prepare(hour, own);
  for (const Batch& batch : own.batches) inwards(hour, 0, own, batch);
  for (std::size_t stage = 0; stage < stages_; ++stage) {
    crew.wait();
    if (stage == 0) sum_gains(hour, own);
    own.meeting = close(hour, stage, own);
    if (crew.index() == 0) collect(hour, stage, own.meeting);
    for (const Batch& batch : own.batches) {
      outwards(hour, stage, own, batch);
      if (stage + 1 < stages_) inwards(hour, stage + 1, own, batch);
    }
  }
  end_hour(hour, own);
}

void FusedStepper::prepare(const Hour& hour, Own& own) {
  const auto make = [&](BoreLine& line, const march::Group& group, const FlowRegime& regime) {
    line.make(problem_, group, regime, fast_.radial(), ars222::gamma * problem_.step);
  };
  if (own.from > 0) fetch(hour.task.of(own.from));
  for (std::size_t stage = 0; stage < stages_; ++stage) {
    problem_.undisturbed.at(stage_time(hour.state, stage),
                            {own.undisturbed.data() + stage * problem_.row(), problem_.nz()});
  }
  own.bores.prepare(hour.task, own.from, own.past, make);
  for (std::size_t g = own.from; g < own.past; ++g) {
    if (own.bores.of(g)) gain_[slot_[g]] = own.bores.of(g)->gain();
    groups_[g].surface = 0;
    groups_[g].topmost = {};
  }
}

/// Once all threads have prepared the hour.
void FusedStepper::sum_gains(const Hour& hour, Own& own) const {
  own.gain = 0;
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const march::Group& group = problem_.groups[g];
    own.share[g] = own.chain_gain[g] = 0;
    if (!hour.task.of(g) || hour.heat_rate <= 0) continue;
    const bool first = group.upstream == march::Group::none;
    own.chain_gain[g] = gain_[slot_[g]] * (first ? 1.0 : own.chain_gain[group.upstream]);
    if (group.returns) own.share[g] = group.members * hour.task.of(g)->heat_rate / hour.heat_rate;
    own.gain += own.share[g] * own.chain_gain[g];
  }
}

void FusedStepper::end_hour(const Hour& hour, const Own& own) {
  const bool day_ends = slow_ && ends_a_day(hour.state.time);
  for (std::size_t g = own.from; g < own.past; ++g) {
    if (!own.bores.of(g)) continue;
    groups_[g].fluid = fluid_of(problem_, g, block(hour.state, g));
    if (day_ends) slow_clock(hour.state, g);
  }
}

void FusedStepper::inwards(const Hour& hour, std::size_t stage, const Own& own, const Batch& batch) {
  const std::size_t row = problem_.row(), step_stage = stage % 2;
  std::array<const fused::BoreFactors*, side_by_side> bores{};
  std::array<double*, side_by_side> works{};
  std::array<std::size_t, side_by_side> groups{};
  Pair up[side_by_side] = {};
  std::size_t count = 0;
  for (std::size_t g = batch.from; g < batch.past; ++g) {
    const BoreLine* line = own.bores.of(g);
    if (!line) continue;
    double *y = block(hour.state, g), *first = first_stage(g);
    const double* beyond = slow_ ? y + ground() + problem_.clocks.buffer_end * row : zero_.data();
    if (step_stage == 0) {
      lose(fast_, g, 1 - ars222::gamma, y + ground());
      kernels_.first_inwards(fast_.factors(), y + ground(), beyond, first);
    } else {
      kernels_.second_inwards(fast_.factors(), y + ground(), first, beyond);
    }
    const fused::Outside outside{own.undisturbed.data() + stage * row, hour.state.neighbours.data() + g * row,
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
    groups_[groups[b]].up = up[b];
    offset_[step_stage][slot_[groups[b]]] = own.bores.of(groups[b])->outlet(up[b]);
  }
}

loop::Meeting FusedStepper::close(const Hour& hour, std::size_t stage, Own& own) const {
  loop::FieldResponse field{own.gain, 0, hour.heat_rate};
  if (field.heat_rate <= 0) return {};
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    if (!hour.task.of(g)) continue;
    const std::size_t upstream = problem_.groups[g].upstream;
    own.outlets[g] = offset_[stage % 2][slot_[g]];
    if (upstream != march::Group::none) own.outlets[g] += gain_[slot_[g]] * own.outlets[upstream];
    field.offset += own.share[g] * own.outlets[g];
  }
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  return loop::meet(field, hour.task.demand, problem_.pumps);
}

void FusedStepper::outwards(const Hour& hour, std::size_t stage, const Own& own, const Batch& batch) {
  std::array<const fused::BoreFactors*, side_by_side> bores{};
  std::array<double*, side_by_side> works{};
  std::array<std::size_t, side_by_side> groups{};
  Pair inlets[side_by_side] = {};
  std::size_t count = 0;
  for (std::size_t g = batch.from; g < batch.past; ++g) {
    const BoreLine* line = own.bores.of(g);
    if (!line) continue;
    const std::size_t upstream = problem_.groups[g].upstream;
    const bool first = upstream == march::Group::none;
    const double lft = own.meeting.lft;
    const double inlet = first ? lft : own.chain_gain[upstream] * lft + own.outlets[upstream];
    inlets[count] = line->inlets(inlet, groups_[g].up);
    bores[count] = &line->factors();
    works[count] = work(g);
    groups[count++] = g;
  }
  kernels_.bore_downwards[bore_kernel_](count, bores.data(), works.data(), inlets[0].data());
  for (std::size_t b = 0; b < count; ++b) finish(hour, stage, *own.bores.of(groups[b]), groups[b]);
}

void FusedStepper::finish(const Hour& hour, std::size_t stage, const BoreLine& line, std::size_t g) {
  const std::size_t row = problem_.row();
  const double seconds = problem_.step * ars222::implicit_weight[1 + stage % 2];
  double *y = block(hour.state, g), *theta = y + ground(), *first = first_stage(g),
         *heat = hour.wall_heat.data() + g * row;
  const fused::RingFactors& rings = fast_.factors();
  fused::Crossing crossing;
  if (slow_) crossing = {problem_.clocks.seam, seconds, seam_.data(), hour.state.seam_heat.data() + g * row};
  const auto bore = kernels_.bore_finish[bore_kernel_];
  if (stage % 2 == 0) {
    bore(line.factors(), work(g), seconds, rings.old, rings.fresh, y, first, heat);
    kernels_.first_outwards(rings, crossing, theta, first);
    lose(fast_, g, 1, first);
  } else {
    bore(line.factors(), work(g), seconds, 0, 1, y, theta, heat);
    kernels_.second_outwards(rings, crossing, theta);
  }
  if (hour.heat_rate > 0) return;
  const double share = seconds / seconds_per_hour;
  const double* streams = work(g) + row + problem_.groups[g].first;
  groups_[g].topmost[0] += share * streams[problem_.down_row() * row];
  groups_[g].topmost[1] += share * streams[problem_.up_row(problem_.passes - 1) * row];
}

/// Through the surface goes what the explicit weights make of stages 0 and 1, y and Y:
///   delta L(y) + (1 - delta) L(Y) = (1 - gamma) L(y) + L(what first_outwards leaves of y and Y).
void FusedStepper::lose(const Rings& rings, std::size_t g, double part, const double* y) {
  groups_[g].surface += part * rings.step() * rings.surface_loss(y);
}

void FusedStepper::collect(const Hour& hour, std::size_t stage, const loop::Meeting& meeting) {
  const double share = problem_.step / seconds_per_hour * ars222::implicit_weight[1 + stage % 2];
  sums_.eft += share * meeting.eft;
  sums_.lft += share * meeting.lft;
  sums_.power += share * meeting.power;
  sums_.to_ground += share * hour.heat_rate * (meeting.lft - meeting.eft);
}

void FusedStepper::collect_standing(const Hour& hour) {
  double going = 0, coming = 0, outlets = 0, inlets = 0;
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const march::Group& group = problem_.groups[g];
    if (!hour.task.of(g)) continue;
    if (group.upstream == march::Group::none) {
      going += group.members * groups_[g].topmost[0];
      inlets += group.members;
    }
    if (group.returns) {
      coming += group.members * groups_[g].topmost[1];
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
