#include "engine/march/fused/stepper.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/march/fused/bore_line.hpp"
#include "engine/march/fused/inlet_answers.hpp"
#include "engine/march/fused/mode_ground.hpp"
#include "engine/march/fused/ring_ground.hpp"
#include "engine/march/made_for_bores.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march {

namespace {

using fused::BoreLine;
using fused::InletAnswers;
using fused::Site;

/// Inlet of the groups as they go through a span before it is known [K]. Any would do: it is near what it will be, so
/// that little is left to round-off.
constexpr double given_inlet = 283.15;

/// An hour as all threads see it.
struct Hour {
  State& state;
  const Task& task;
  Vector& wall_heat;
  double heat_rate = 0;  ///< of the whole field [W/K]
};

long hours(double time) {
  return std::lround(time / seconds_per_hour);
}
bool starts_a_turn(double time) {
  return hours(time) % Clocks::slow_hours == 0;
}
bool starts_a_day(double time) {
  return hours(time) % 24 == 0;
}

/// How many stages of an hour of `stages` go before field and heat pumps meet: all of them, unless that would be many:
/// what the stages do to each other grows with their square.
std::size_t stages_together(std::size_t stages) {
  constexpr std::size_t most = 8;
  std::size_t parts = 1;
  while (stages / 2 % parts != 0 || stages / parts > most) ++parts;
  return stages / parts;
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
  FusedStepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels, bool stage_by_stage);
  HourMeans advance(State& state, const Task& task, Vector& wall_heat) override;

 private:
  using Pair = std::array<double, 2>;

  /// A stage once the bore has been gone up.
  struct Halfway {
    double* innermost = nullptr;  // ring, what Ground::inwards gave
    Pair up = {};                 // what each pass brings up at inlets of 0
  };

  /// A bore's factors, and how it answers within a span.
  struct Bore {
    BoreLine line;
    InletAnswers answers;  // of flowing fluid
  };

  /// A group within an hour.
  struct Group {
    Halfway halfway;
    double surface = 0;  // heat lost [J]
    Pair topmost = {};   // mean of standing fluid, going down and coming up
  };

  /// What of an hour is for all to know, [slot] each.
  struct Told {
    std::array<Vector, 2> outlets;             // [span, odd or even][slot][stage]: at inlets of given_inlet
    std::vector<const InletAnswers*> answers;  // null: stands, or is not there
    Vector surface, fluid_length, fluid_sum, going, coming;
  };

  /// What each thread has for itself, found by the same sums in the same order: to work it out again is quicker than to
  /// fetch it from another core.
  struct alignas(apart) Own {
    std::size_t from = 0, past = 0;      // its groups
    MadeForBores<Bore> bores;            // of its groups
    std::vector<Group> groups;           // [own group]
    Vector undisturbed;                  // [stage of the hour][z]
    Vector outlets;                      // [own group][stage of the span]: at inlets of given_inlet
    std::vector<double> share;           // [group]: of the field's outlet
    std::vector<double> gains;           // [group]: outlet per inlet of the field, of one stage
    std::vector<double> offsets;         // [group]: outlet at a field's inlet of 0, of one stage
    Vector inlets;                       // [group][stage of the span]: less given_inlet
    std::vector<const double*> answers;  // [stage]
    double gain = 0;                     // of the whole field
    HourMeans sums;                      // of the field, each thread's the same
    Vector work;                         // of one bore
    Vector scratch;                      // of one site
    Vector at_rest;                      // block, amplitudes and heat of a group at rest
    Vector nothing;                      // [z]
  };

  Own make_own(std::size_t thread) const;
  void march(const Hour& hour, Workers::Crew& crew);
  void prepare(const Hour& hour, Own& own);
  void make(Own& own, Bore& bore, const march::Group& group, const FlowRegime& regime);
  void answer(Own& own, Bore& bore, const march::Group& group);
  void go_through(const Hour& hour, std::size_t first, Own& own, std::size_t g);
  Halfway rise(const BoreLine& line, const Site& site, std::size_t stage, const fused::Outside& outside, double* work,
               double& surface) const;
  void descend(const BoreLine& line, const Site& site, std::size_t stage, const Halfway& halfway, double inlet,
               double* work, double* heat, double& surface) const;
  void add_topmost(std::size_t stage, const Site& site, const double* work, Group& group) const;
  fused::Outside outside(const Hour& hour, const Own& own, std::size_t g, std::size_t stage) const;
  void complete(const Hour& hour, std::size_t stage, Own& own, std::size_t g, double inlet);
  void tell(std::size_t first, const Own& own);
  void meet(const Hour& hour, std::size_t first, Own& own);
  void sum_gains(const Hour& hour, Own& own) const;
  loop::Meeting close(const Hour& hour, std::size_t first, std::size_t stage, Own& own) const;
  void collect(const Hour& hour, std::size_t stage, const loop::Meeting& meeting, HourMeans& sums) const;
  void collect_standing(const Hour& hour, HourMeans& means) const;
  void add_answers(const Hour& hour, Own& own, std::size_t g);
  void end_hour(const Hour& hour, Own& own, std::size_t g);

  /// Of all groups the same one, or each its own where stages are left halfway.
  std::size_t place(const Own& own, std::size_t g) const { return stage_by_stage_ ? g - own.from : 0; }
  double* work(Own& own, std::size_t g) const {
    return own.work.data() + place(own, g) * fused::work_rows(problem_.streams()) * problem_.row();
  }
  Site site(State& state, Own& own, std::size_t g) const {
    double* amplitudes = state.amplitudes.empty() ? nullptr : state.amplitudes.data() + g * amplitudes_block_;
    double* scratch = own.scratch.data() + place(own, g) * ground_.scratch_rows() * problem_.row();
    return {problem_.groups[g], block(state, g), amplitudes, scratch};
  }
  /// Rows of an answer: those of y, the amplitudes', the heat's.
  std::size_t y_rows() const { return problem_.ground_row() + ground_.ground_rows(); }
  std::size_t answer_rows() const { return y_rows() + ground_.stepped_rows() + 1; }
  double* block(State& state, std::size_t g) const { return state.y.data() + g * problem_.block(); }
  double stage_time(const State& state, std::size_t stage) const {
    return state.time + problem_.step * (static_cast<double>(stage / 2) + ars222::c[1 + stage % 2]);
  }

  /// What a stage counts for in an hour's means and sums [s].
  double stage_seconds(std::size_t stage) const { return problem_.step * ars222::implicit_weight[1 + stage % 2]; }

  const Problem& problem_;
  Workers& workers_;
  const fused::BoreKernels& kernels_;
  std::size_t lanes_;        // of the kernels
  std::size_t bore_kernel_;  // which of the kernels' pairs
  std::size_t stages_;       // of an hour
  bool stage_by_stage_;      // whether field and heat pumps meet in each
  std::size_t span_;         // stages before they meet
  Ground ground_;
  std::size_t amplitudes_block_;
  std::vector<std::unique_ptr<Own>> own_;  // [thread]
  std::vector<std::size_t> slot_;          // [group]: of what is told; what different threads write stands apart
  Told told_;
};

template <class Ground>
FusedStepper<Ground>::FusedStepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels,
                                   bool stage_by_stage)
    : problem_(problem),
      workers_(workers),
      kernels_(kernels.bore),
      lanes_(kernels.lanes),
      bore_kernel_(problem.passes - 1),
      stages_(2 * static_cast<std::size_t>(std::lround(seconds_per_hour / problem.step))),
      stage_by_stage_(stage_by_stage),
      span_(stage_by_stage_ ? 1 : stages_together(stages_)),
      ground_(problem, kernels),
      amplitudes_block_(problem.clocks.amplitudes(problem.nr()) * problem.row()) {
  own_.resize(static_cast<std::size_t>(workers.threads()));
  // Each thread takes its own memory itself: allocators keep threads apart.
  workers.together([&](Workers::Crew& crew) { own_[crew.index()] = std::make_unique<Own>(make_own(crew.index())); });
  for (const auto& own : own_) {
    constexpr std::size_t together = apart / sizeof(double);
    const std::size_t first = (slot_.empty() ? 0 : slot_.back() / together + 1) * together;
    for (std::size_t g = own->from; g < own->past; ++g) slot_.push_back(first + g - own->from);
  }
  const std::size_t slots = slot_.back() + 1;
  told_.outlets = {Vector(slots * span_), Vector(slots * span_)};
  told_.answers.assign(slots, nullptr);
  for (Vector* told : {&told_.surface, &told_.fluid_length, &told_.fluid_sum, &told_.going, &told_.coming}) {
    told->assign(slots, 0.0);
  }
}

template <class Ground>
typename FusedStepper<Ground>::Own FusedStepper<Ground>::make_own(std::size_t thread) const {
  const std::size_t all = problem_.groups.size(), row = problem_.row();
  const auto [from, past] = workers_.part(all, thread);
  const std::vector<double> each(all);
  const std::size_t places = stage_by_stage_ ? past - from : 1;
  return {from,
          past,
          MadeForBores<Bore>(problem_),
          std::vector<Group>(past - from),
          Vector(stages_ * row),
          Vector((past - from) * span_),
          each,
          each,
          each,
          Vector(all * span_),
          std::vector<const double*>(span_),
          0,
          {},
          Vector(places * fused::work_rows(problem_.streams()) * row),
          Vector(places * ground_.scratch_rows() * row),
          Vector(problem_.block() + amplitudes_block_ + row),
          Vector(row)};
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

/// The threads meet once a span: until then each of their groups goes through it at given inlets, and after that it is
/// told what the true ones change. `given` is another thread's, whose stack is written to meanwhile: copied.
template <class Ground>
void FusedStepper<Ground>::march(const Hour& given, Workers::Crew& crew) {
  const Hour hour = given;
  Own& own = *own_[crew.index()];
  prepare(hour, own);
  for (std::size_t first = 0; first < stages_; first += span_) {
    for (std::size_t g = own.from; g < own.past; ++g) go_through(hour, first, own, g);
    tell(first, own);
    crew.wait();
    meet(hour, first, own);
  }
  for (std::size_t g = own.from; g < own.past; ++g) end_hour(hour, own, g);
}

/// Each thread for all groups, then for its own.
template <class Ground>
void FusedStepper<Ground>::meet(const Hour& hour, std::size_t first, Own& own) {
  if (first == 0) sum_gains(hour, own);
  for (std::size_t s = 0; s < span_ && hour.heat_rate > 0; ++s) {
    collect(hour, first + s, close(hour, first, s, own), own.sums);
  }
  for (std::size_t g = own.from; g < own.past; ++g) {
    if (!own.bores.of(g)) continue;
    if (stage_by_stage_) {
      complete(hour, first, own, g, given_inlet + own.inlets[g]);
    } else {
      add_answers(hour, own, g);
    }
  }
}

template <class Ground>
void FusedStepper<Ground>::prepare(const Hour& hour, Own& own) {
  if (own.from > 0) fetch(hour.task.of(own.from));
  for (std::size_t s = 0; s < stages_; ++s) {
    problem_.undisturbed.at(stage_time(hour.state, s), {own.undisturbed.data() + s * problem_.row(), problem_.nz()});
  }
  own.sums = {};
  std::fill(own.groups.begin(), own.groups.end(), Group{});
  own.bores.prepare(
      hour.task, own.from, own.past,
      [&](Bore& bore, const march::Group& group, const FlowRegime& regime) { make(own, bore, group, regime); });
}

template <class Ground>
void FusedStepper<Ground>::make(Own& own, Bore& bore, const march::Group& group, const FlowRegime& regime) {
  bore.line.make(problem_, group, regime, ground_.wall_response(), ars222::gamma * problem_.step, lanes_);
  if (regime.heat_rate <= 0) return;
  if (!stage_by_stage_) return answer(own, bore, group);
  bore.answers.resize(1, 0);
  bore.answers.outlet_from(0, 0) = bore.line.gain();
}

/// Marches a group at rest through a span, its inlet 1 K in one stage and 0 in all others.
template <class Ground>
void FusedStepper<Ground>::answer(Own& own, Bore& bore, const march::Group& group) {
  const std::size_t row = problem_.row(), rows = answer_rows() * row;
  if (bore.answers.empty()) bore.answers.resize(span_, rows);
  double* heat = own.at_rest.data() + problem_.block() + amplitudes_block_;
  const Site site{group, own.at_rest.data(), own.at_rest.data() + problem_.block(), own.scratch.data()};
  const double* nothing = own.nothing.data();
  const std::size_t in_y = y_rows() * row, in_amplitudes = ground_.stepped_rows() * row;
  for (std::size_t of : {0, 1}) {
    std::fill(site.y, site.y + in_y, 0.0);
    std::fill(ground_.stepped(site), ground_.stepped(site) + in_amplitudes, 0.0);
    std::fill(heat, heat + row, 0.0);
    double surface = 0;
    for (std::size_t s = 0; s < span_; ++s) {
      const double inlet = s == of ? 1 : 0;
      const Halfway halfway = rise(bore.line, site, s, {nothing, nothing, nothing, 0}, own.work.data(), surface);
      descend(bore.line, site, s, halfway, inlet, own.work.data(), heat, surface);
      bore.answers.outlet_from(of, s) = bore.line.outlet(halfway.up) + bore.line.gain() * inlet;
      if (s % 2 == 0) continue;
      double* end = bore.answers.end(of, s / 2 + 1);
      end = std::copy(site.y, site.y + in_y, end);
      end = std::copy(ground_.stepped(site), ground_.stepped(site) + in_amplitudes, end);
      std::copy(heat, heat + row, end);
      bore.answers.lost(of, s / 2 + 1) = surface;
    }
  }
}

/// A stage of one bore and its ground, up the bore.
template <class Ground>
typename FusedStepper<Ground>::Halfway FusedStepper<Ground>::rise(const BoreLine& line, const Site& site,
                                                                  std::size_t stage, const fused::Outside& outside,
                                                                  double* work, double& surface) const {
  Halfway halfway{ground_.inwards(stage, site, surface), {}};
  kernels_.upwards[bore_kernel_](line.factors(), site.y, outside, halfway.innermost, work, halfway.up.data());
  return halfway;
}

/// And down.
template <class Ground>
void FusedStepper<Ground>::descend(const BoreLine& line, const Site& site, std::size_t stage, const Halfway& halfway,
                                   double inlet, double* work, double* heat, double& surface) const {
  const double old = stage % 2 == 0 ? ars222::second_of_old : 0, fresh = stage % 2 == 0 ? ars222::second_of_first : 1;
  kernels_.downwards[bore_kernel_](line.factors(), work, line.inlets(inlet, halfway.up).data(), stage_seconds(stage),
                                   old, fresh, site.y, halfway.innermost, heat);
  ground_.outwards(stage, site, work, surface);
}

template <class Ground>
void FusedStepper<Ground>::add_topmost(std::size_t stage, const Site& site, const double* work, Group& group) const {
  const std::size_t row = problem_.row();
  const double share = stage_seconds(stage) / seconds_per_hour;
  const double* streams = work + row + site.group.first;
  group.topmost[0] += share * streams[problem_.down_row() * row];
  group.topmost[1] += share * streams[problem_.up_row(problem_.passes - 1) * row];
}

template <class Ground>
fused::Outside FusedStepper<Ground>::outside(const Hour& hour, const Own& own, std::size_t g, std::size_t stage) const {
  const std::size_t row = problem_.row();
  return {own.undisturbed.data() + stage * row, hour.state.neighbours.data() + g * row,
          hour.state.neighbours_before.data() + g * row,
          (stage_time(hour.state, stage) - hour.state.refreshed) / problem_.refresh};
}

/// The second half of a stage, and what of it an hour without flow tells.
template <class Ground>
void FusedStepper<Ground>::complete(const Hour& hour, std::size_t stage, Own& own, std::size_t g, double inlet) {
  const Site here = site(hour.state, own, g);
  Group& group = own.groups[g - own.from];
  descend(own.bores.of(g)->line, here, stage, group.halfway, inlet, work(own, g),
          hour.wall_heat.data() + g * problem_.row(), group.surface);
  if (hour.heat_rate <= 0) add_topmost(stage, here, work(own, g), group);
}

/// Through the span, or halfway through its only stage.
template <class Ground>
void FusedStepper<Ground>::go_through(const Hour& hour, std::size_t first, Own& own, std::size_t g) {
  const Bore* bore = own.bores.of(g);
  if (!bore) return;
  const Site here = site(hour.state, own, g);
  Group& group = own.groups[g - own.from];
  double* outlets = own.outlets.data() + (g - own.from) * span_;
  if (first == 0 && starts_a_day(hour.state.time)) ground_.start_turn(here, group.surface);
  for (std::size_t s = 0; s < span_; ++s) {
    // Where stages go on without a break the ground counts them from the break on.
    const std::size_t stage = stage_by_stage_ ? first : s;
    group.halfway = rise(bore->line, here, stage, outside(hour, own, g, first + s), work(own, g), group.surface);
    outlets[s] = bore->line.outlet(group.halfway.up) + bore->line.gain() * given_inlet;
    if (!stage_by_stage_) complete(hour, stage, own, g, given_inlet);
  }
}

/// All at once: whoever writes to a line that others have read waits for it.
template <class Ground>
void FusedStepper<Ground>::tell(std::size_t first, const Own& own) {
  if (own.from == own.past) return;
  const std::size_t slot = slot_[own.from];
  std::copy(own.outlets.begin(), own.outlets.end(), told_.outlets[first / span_ % 2].data() + slot * span_);
  if (first > 0) return;
  for (std::size_t g = own.from; g < own.past; ++g) {
    const Bore* bore = own.bores.of(g);
    told_.answers[slot_[g]] = bore && bore->line.factors().flows ? &bore->answers : nullptr;
  }
}

/// Once all threads have told.
template <class Ground>
void FusedStepper<Ground>::sum_gains(const Hour& hour, Own& own) const {
  own.gain = 0;
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const march::Group& group = problem_.groups[g];
    own.share[g] = own.gains[g] = own.offsets[g] = 0;
    const InletAnswers* answers = told_.answers[slot_[g]];
    if (!answers) continue;
    const bool first = group.upstream == march::Group::none;
    own.gains[g] = answers->outlet(0, 0) * (first ? 1.0 : own.gains[group.upstream]);
    if (group.returns) own.share[g] = group.members * hour.task.of(g)->heat_rate / hour.heat_rate;
    own.gain += own.share[g] * own.gains[g];
  }
}

/// Where field and heat pumps meet in a stage, those before being known; the groups' inlets follow.
template <class Ground>
loop::Meeting FusedStepper<Ground>::close(const Hour& hour, std::size_t first, std::size_t stage, Own& own) const {
  loop::FieldResponse field{own.gain, 0, hour.heat_rate};
  const Vector& outlets = told_.outlets[first / span_ % 2];
  const InletAnswers* alike = nullptr;  // bores that answer alike to the same inlets
  double answered = 0;                  // to the stages before
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const InletAnswers* answers = told_.answers[slot_[g]];
    if (!answers) continue;
    const std::size_t upstream = problem_.groups[g].upstream;
    const double gain = answers->outlet(0, 0);
    if (answers != alike || upstream != march::Group::none) {
      answered = -gain * given_inlet;
      for (std::size_t of = 0; of < stage; ++of) answered += answers->outlet(stage, of) * own.inlets[g * span_ + of];
      alike = upstream == march::Group::none ? answers : nullptr;
    }
    double offset = outlets[slot_[g] * span_ + stage] + answered;
    if (upstream != march::Group::none) offset += gain * own.offsets[upstream];
    own.offsets[g] = offset;
    field.offset += own.share[g] * offset;
  }
  if (!std::isfinite(field.offset)) throw NumericsError("the march left the finite numbers");
  const loop::Meeting meeting = loop::meet(field, hour.task.demand, problem_.pumps);
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    const std::size_t upstream = problem_.groups[g].upstream;
    const double inlet =
        upstream == march::Group::none ? meeting.lft : own.gains[upstream] * meeting.lft + own.offsets[upstream];
    own.inlets[g * span_ + stage] = inlet - given_inlet;
  }
  return meeting;
}

template <class Ground>
void FusedStepper<Ground>::collect(const Hour& hour, std::size_t stage, const loop::Meeting& meeting,
                                   HourMeans& sums) const {
  const double share = stage_seconds(stage) / seconds_per_hour;
  sums.eft += share * meeting.eft;
  sums.lft += share * meeting.lft;
  sums.power += share * meeting.power;
  sums.to_ground += share * hour.heat_rate * (meeting.lft - meeting.eft);
}

template <class Ground>
void FusedStepper<Ground>::add_answers(const Hour& hour, Own& own, std::size_t g) {
  const Bore* bore = own.bores.of(g);
  if (!bore->line.factors().flows) return;
  const Site here = site(hour.state, own, g);
  const auto [from, past] = ground_.layers(here.group);
  const std::size_t row = problem_.row();
  const double* factors = own.inlets.data() + g * span_;
  Group& group = own.groups[g - own.from];
  for (std::size_t of = 0; of < span_; ++of) {
    own.answers[of] = bore->answers.end_of_span(of);
    group.surface += bore->answers.lost_in_span(of) * factors[of];
  }
  const auto add = [&](std::size_t rows, double* to) {
    kernels_.add_answers(rows, row, from, past, span_, own.answers.data(), factors, to);
    for (const double*& answer : own.answers) answer += rows * row;
  };
  add(y_rows(), here.y);
  add(ground_.stepped_rows(), ground_.stepped(here));
  add(1, hour.wall_heat.data() + g * row);
}

template <class Ground>
void FusedStepper<Ground>::end_hour(const Hour& hour, Own& own, std::size_t g) {
  if (!own.bores.of(g)) return;
  Group& group = own.groups[g - own.from];
  const double end = hour.state.time + seconds_per_hour;
  if (starts_a_turn(end)) {
    // Midnight, when others look at the ground, stands between two turns. Elsewhere one begins while the memory is
    // near.
    const Site here = site(hour.state, own, g);
    const bool midnight = starts_a_day(end);
    ground_.end_turn(here, midnight, group.surface);
    if (!midnight) ground_.start_turn(here, group.surface);
  }
  const Fluid fluid = fluid_of(problem_, g, block(hour.state, g));
  const std::size_t slot = slot_[g];
  told_.surface[slot] = group.surface;
  told_.fluid_length[slot] = fluid.length;
  told_.fluid_sum[slot] = fluid.sum;
  told_.going[slot] = group.topmost[0];
  told_.coming[slot] = group.topmost[1];
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

std::unique_ptr<Stepper> make_fused_stepper(const Problem& problem, Workers& workers, const fused::Kernels& kernels,
                                            Meetings meetings) {
  const bool small = problem.groups.size() < 2 * groups_worth_a_thread;
  const bool stages = meetings == Meetings::every_stage || (meetings == Meetings::as_it_pays && small);
  if (problem.clocks.two()) {
    return std::make_unique<FusedStepper<fused::ModeGround>>(problem, workers, kernels, stages);
  }
  return std::make_unique<FusedStepper<fused::RingGround>>(problem, workers, kernels, stages);
}

}  // namespace stillground::march
