#include "engine/march/fused/stepper.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/march/fused/bore_line.hpp"
#include "engine/march/fused/mode_ground.hpp"
#include "engine/march/fused/ring_ground.hpp"
#include "engine/march/made_for_bores.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march {

namespace {

using fused::BoreLine;

/// An hour as all threads see it.
struct Hour {
  State& state;
  const Task& task;
  Vector& wall_heat;
  double heat_rate = 0;  ///< of the whole field [W/K]
};

bool starts_a_day(double time) {
  return std::lround(time / seconds_per_hour) % Clocks::slow_hours == 0;
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

/// What different threads write stays on lines of its own, and lines are fetched in pairs.
constexpr std::size_t apart = 128;

/// `Ground`: how what surrounds the bores is marched.
template <class Ground>
class FusedStepper final : public Stepper {
 public:
  FusedStepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels);
  HourMeans advance(State& state, const Task& task, Vector& wall_heat) override;

 private:
  using Pair = std::array<double, 2>;

  /// A group within an hour.
  struct Group {
    Pair up = {};                 // what each pass brings up at inlets of 0, of this stage
    double* innermost = nullptr;  // ring within this stage, what Ground::inwards gave
    double surface = 0;           // heat lost in this hour [J]
    Pair topmost = {};            // hour's mean of standing fluid, going down and coming up
  };

  /// What of an hour is for all to know, [slot] each.
  struct Told {
    Vector surface, fluid_length, fluid_sum, going, coming;
  };

  /// What each thread has for itself, found by the same sums in the same order: to work it out again is quicker than to
  /// fetch it from another core.
  struct alignas(apart) Own {
    std::size_t from = 0, past = 0;  // its groups
    MadeForBores<BoreLine> bores;    // of its groups
    Vector undisturbed;              // [stage of the hour][z]
    std::vector<double> share;       // [group]: of the field's outlet
    std::vector<double> chain_gain;  // [group]: outlet per inlet of the field
    std::vector<double> outlets;     // [group]: outlet at a field's inlet of 0, of this stage
    std::vector<double> offsets;     // [own group]: outlet at an inlet of 0, of the stage to come
    std::vector<Group> groups;       // [own group]
    double gain = 0;                 // of the whole field
    loop::Meeting meeting;           // of this stage
    HourMeans sums;                  // of the field, each thread's the same
  };

  Own make_own(std::size_t thread) const;
  void march(const Hour& hour, Workers::Crew& crew);
  void prepare(const Hour& hour, Own& own);
  void sum_gains(const Hour& hour, Own& own) const;
  void end_hour(const Hour& hour, Own& own);
  void inwards(const Hour& hour, std::size_t stage, Own& own, std::size_t g);
  void outwards(const Hour& hour, std::size_t stage, Own& own, std::size_t g);
  loop::Meeting close(const Hour& hour, std::size_t stage, Own& own) const;
  void collect(const Hour& hour, std::size_t stage, Own& own) const;
  void collect_standing(const Hour& hour, HourMeans& means) const;

  double* block(State& state, std::size_t g) const { return state.y.data() + g * problem_.block(); }
  double* work(std::size_t g) { return work_.data() + g * work_block_; }
  double stage_time(const State& state, std::size_t stage) const {
    return state.time + problem_.step * (static_cast<double>(stage / 2) + ars222::c[1 + stage % 2]);
  }

  const Problem& problem_;
  Workers& workers_;
  const fused::BoreKernels& kernels_;
  std::size_t lanes_;        // of the kernels
  std::size_t bore_kernel_;  // which of the kernels' pairs
  std::size_t stages_;       // of an hour
  Ground ground_;
  std::size_t work_block_;
  Vector work_;                            // [group]
  std::vector<std::unique_ptr<Own>> own_;  // [thread]
  std::vector<std::size_t> slot_;          // [group]: of offset_ and gain_; what different threads write stands apart
  std::array<Vector, 2> offset_;           // [stage of the step][slot]: outlet at an inlet of 0
  Vector gain_;                            // [slot]: outlet per inlet
  Told told_;
};

template <class Ground>
FusedStepper<Ground>::FusedStepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels)
    : problem_(problem),
      workers_(workers),
      kernels_(kernels.bore),
      lanes_(kernels.lanes),
      bore_kernel_(problem.passes - 1),
      stages_(2 * static_cast<std::size_t>(std::lround(seconds_per_hour / problem.step))),
      ground_(problem, kernels),
      work_block_(fused::work_rows(problem.streams()) * problem.row()),
      work_(problem.groups.size() * work_block_) {
  own_.resize(static_cast<std::size_t>(workers.threads()));
  // Each thread takes its own memory itself: allocators keep threads apart.
  workers.together([&](Workers::Crew& crew) { own_[crew.index()] = std::make_unique<Own>(make_own(crew.index())); });
  for (const auto& own : own_) {
    constexpr std::size_t together = apart / sizeof(double);
    const std::size_t first = (slot_.empty() ? 0 : slot_.back() / together + 1) * together;
    for (std::size_t g = own->from; g < own->past; ++g) slot_.push_back(first + g - own->from);
  }
  const std::size_t slots = slot_.back() + 1;
  offset_ = {Vector(slots), Vector(slots)};
  for (Vector* told : {&gain_, &told_.surface, &told_.fluid_length, &told_.fluid_sum, &told_.going, &told_.coming}) {
    told->assign(slots, 0.0);
  }
}

template <class Ground>
typename FusedStepper<Ground>::Own FusedStepper<Ground>::make_own(std::size_t thread) const {
  const std::size_t all = problem_.groups.size();
  const auto [from, past] = workers_.part(all, thread);
  return {from,
          past,
          MadeForBores<BoreLine>(problem_),
          Vector(stages_ * problem_.row()),
          std::vector<double>(all),
          std::vector<double>(all),
          std::vector<double>(all),
          std::vector<double>(past - from),
          std::vector<Group>(past - from),
          0,
          {},
          {}};
}

template <class Ground>
HourMeans FusedStepper<Ground>::advance(State& state, const Task& task, Vector& wall_heat) {
  const Hour hour{state, task, wall_heat, heat_rate(problem_, task)};
  workers_.together([&](Workers::Crew& crew) { march(hour, crew); });
  HourMeans means = own_.front()->sums;
  if (hour.heat_rate <= 0) collect_standing(hour, means);
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    if (task.of(g)) means.surface += problem_.groups[g].members * told_.surface[slot_[g]] / seconds_per_hour;
  }
  means.fluid = mean_fluid(
      problem_.groups.size(), [&](std::size_t g) { return task.of(g) != nullptr; },
      [&](std::size_t g) {
        return Fluid{told_.fluid_length[slot_[g]], told_.fluid_sum[slot_[g]]};
      });
  state.time += seconds_per_hour;
  return means;
}

/// `given` is another thread's, whose stack is written to meanwhile: copied.
template <class Ground>
void FusedStepper<Ground>::march(const Hour& given, Workers::Crew& crew) {
  const Hour hour = given;
  Own& own = *own_[crew.index()];
  prepare(hour, own);
  for (std::size_t g = own.from; g < own.past; ++g) inwards(hour, 0, own, g);
  for (std::size_t stage = 0; stage < stages_; ++stage) {
    // All at once: whoever writes to a line that others have read waits for it.
    if (own.past > own.from) std::copy(own.offsets.begin(), own.offsets.end(), &offset_[stage % 2][slot_[own.from]]);
    crew.wait();
    if (stage == 0) sum_gains(hour, own);
    own.meeting = close(hour, stage, own);
    collect(hour, stage, own);
    for (std::size_t g = own.from; g < own.past; ++g) {
      outwards(hour, stage, own, g);
      if (stage + 1 < stages_) inwards(hour, stage + 1, own, g);
    }
  }
  end_hour(hour, own);
}

template <class Ground>
void FusedStepper<Ground>::prepare(const Hour& hour, Own& own) {
  const auto make = [&](BoreLine& line, const march::Group& group, const FlowRegime& regime) {
    line.make(problem_, group, regime, ground_.wall_response(), ars222::gamma * problem_.step, lanes_);
  };
  if (own.from > 0) fetch(hour.task.of(own.from));
  for (std::size_t stage = 0; stage < stages_; ++stage) {
    problem_.undisturbed.at(stage_time(hour.state, stage),
                            {own.undisturbed.data() + stage * problem_.row(), problem_.nz()});
  }
  own.sums = {};
  own.bores.prepare(hour.task, own.from, own.past, make);
  const bool day_starts = starts_a_day(hour.state.time);
  for (std::size_t g = own.from; g < own.past; ++g) {
    if (own.bores.of(g)) gain_[slot_[g]] = own.bores.of(g)->gain();
    Group& group = own.groups[g - own.from] = {};
    if (day_starts && own.bores.of(g)) ground_.start_day(hour.state, g, group.surface);
  }
}

/// Once all threads have prepared the hour.
template <class Ground>
void FusedStepper<Ground>::sum_gains(const Hour& hour, Own& own) const {
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

template <class Ground>
void FusedStepper<Ground>::end_hour(const Hour& hour, Own& own) {
  const bool day_ends = starts_a_day(hour.state.time + seconds_per_hour);
  for (std::size_t g = own.from; g < own.past; ++g) {
    if (!own.bores.of(g)) continue;
    Group& group = own.groups[g - own.from];
    if (day_ends) ground_.end_day(hour.state, g, group.surface);
    const Fluid fluid = fluid_of(problem_, g, block(hour.state, g));
    const std::size_t slot = slot_[g];
    told_.surface[slot] = group.surface;
    told_.fluid_length[slot] = fluid.length;
    told_.fluid_sum[slot] = fluid.sum;
    if (hour.heat_rate > 0) continue;
    told_.going[slot] = group.topmost[0];
    told_.coming[slot] = group.topmost[1];
  }
}

template <class Ground>
void FusedStepper<Ground>::inwards(const Hour& hour, std::size_t stage, Own& own, std::size_t g) {
  const BoreLine* line = own.bores.of(g);
  if (!line) return;
  const std::size_t row = problem_.row();
  Group& group = own.groups[g - own.from];
  group.innermost = ground_.inwards(stage, hour.state, g, group.surface);
  const fused::Outside outside{own.undisturbed.data() + stage * row, hour.state.neighbours.data() + g * row,
                               hour.state.neighbours_before.data() + g * row,
                               (stage_time(hour.state, stage) - hour.state.refreshed) / problem_.refresh};
  kernels_.upwards[bore_kernel_](line->factors(), block(hour.state, g), outside, group.innermost, work(g),
                                 group.up.data());
  own.offsets[g - own.from] = line->outlet(group.up);
}

template <class Ground>
loop::Meeting FusedStepper<Ground>::close(const Hour& hour, std::size_t stage, Own& own) const {
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

template <class Ground>
void FusedStepper<Ground>::outwards(const Hour& hour, std::size_t stage, Own& own, std::size_t g) {
  const BoreLine* line = own.bores.of(g);
  if (!line) return;
  const std::size_t row = problem_.row(), upstream = problem_.groups[g].upstream;
  const double lft = own.meeting.lft;
  const double inlet = upstream == march::Group::none ? lft : own.chain_gain[upstream] * lft + own.outlets[upstream];
  const double seconds = problem_.step * ars222::implicit_weight[1 + stage % 2];
  const double old = stage % 2 == 0 ? ars222::second_of_old : 0, fresh = stage % 2 == 0 ? ars222::second_of_first : 1;
  Group& group = own.groups[g - own.from];
  kernels_.downwards[bore_kernel_](line->factors(), work(g), line->inlets(inlet, group.up).data(), seconds, old, fresh,
                                   block(hour.state, g), group.innermost, hour.wall_heat.data() + g * row);
  ground_.outwards(stage, hour.state, g, work(g), group.surface);
  if (hour.heat_rate > 0) return;
  const double share = seconds / seconds_per_hour;
  const double* streams = work(g) + row + problem_.groups[g].first;
  group.topmost[0] += share * streams[problem_.down_row() * row];
  group.topmost[1] += share * streams[problem_.up_row(problem_.passes - 1) * row];
}

template <class Ground>
void FusedStepper<Ground>::collect(const Hour& hour, std::size_t stage, Own& own) const {
  const double share = problem_.step / seconds_per_hour * ars222::implicit_weight[1 + stage % 2];
  const loop::Meeting& meeting = own.meeting;
  own.sums.eft += share * meeting.eft;
  own.sums.lft += share * meeting.lft;
  own.sums.power += share * meeting.power;
  own.sums.to_ground += share * hour.heat_rate * (meeting.lft - meeting.eft);
}

template <class Ground>
void FusedStepper<Ground>::collect_standing(const Hour& hour, HourMeans& means) const {
  double going = 0, coming = 0, outlets = 0, inlets = 0;
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const march::Group& group = problem_.groups[g];
    if (!hour.task.of(g)) continue;
    if (group.upstream == march::Group::none) {
      going += group.members * told_.going[slot_[g]];
      inlets += group.members;
    }
    if (group.returns) {
      coming += group.members * told_.coming[slot_[g]];
      outlets += group.members;
    }
  }
  means.lft = going / inlets;
  means.eft = coming / outlets;
}

}  // namespace

std::unique_ptr<Stepper> make_fused_stepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels) {
  if (problem.clocks.two()) return std::make_unique<FusedStepper<fused::ModeGround>>(problem, workers, kernels);
  return std::make_unique<FusedStepper<fused::RingGround>>(problem, workers, kernels);
}

}  // namespace stillground::march
