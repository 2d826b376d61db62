#include "engine/march/fused/stepper.hpp"

#include <utility>

#include "engine/march/fused/hour_march.hpp"
#include "engine/march/fused/mode_ground.hpp"
#include "engine/march/fused/ring_ground.hpp"

namespace stillground::march {

namespace {

using namespace fused;

template <class Ground>
class FusedStepper final : public Stepper {
 public:
  FusedStepper(const Problem& problem, const Multirate& multirate, Workers& workers, const Kernels& kernels,
               bool stage_by_stage)
      : problem_(problem),
        multirate_(multirate),
        workers_(workers),
        spans_(multirate.step, stage_by_stage),
        group_march_(problem, multirate, kernels),
        own_(static_cast<std::size_t>(workers.threads())),
        exchange_(problem.groups.size(), spans_.length, workers) {
    // Each thread takes its own memory itself: allocators keep threads apart.
    workers.as_team([&](Workers::Team& team) {
      own_[team.index()] = std::make_unique<ThreadWorkspace>(make_workspace(team.index()));
    });
  }

  HourMeans advance(State& state, const Forcing& forcing, Vector& wall_heat) override {
    const Hour hour{state, forcing, wall_heat, heat_rate(problem_, forcing)};
    workers_.as_team([&](Workers::Team& team) { march(hour, team); });
    state.time += seconds_per_hour;
    return hour_means(problem_, forcing, hour.heat_rate, exchange_, own_.front()->sums);
  }

 private:
  ThreadWorkspace make_workspace(std::size_t thread) const;
  void march(const Hour& given, Workers::Team& team);
  void publish(std::size_t first, const ThreadWorkspace& own);

  const Problem& problem_;
  Multirate multirate_;
  Workers& workers_;
  Spans spans_;
  GroupMarch<Ground> group_march_;
  std::vector<std::unique_ptr<ThreadWorkspace>> own_;  // [thread]
  ExchangeBuffer exchange_;
};

template <class Ground>
ThreadWorkspace FusedStepper<Ground>::make_workspace(std::size_t thread) const {
  const StateLayout& layout = group_march_.layout();
  const Workers::Part part = workers_.part(layout.groups, thread);
  const std::size_t groups = part.end - part.from, row = layout.row();
  const std::size_t places = spans_.stage_by_stage() ? groups : 1;
  return {.part = part,
          .bores = BoreCache<Bore>(problem_),
          .groups = std::vector<GroupProgress>(groups),
          .closure = SpanClosure(problem_, spans_.length),
          .sums = {},
          .undisturbed = Vector(spans_.stages * row),
          .outlets = Vector(groups * spans_.length),
          .work = Vector(places * work_rows(layout.streams()) * row),
          .scratch = Vector(places * group_march_.ground().scratch_rows() * row),
          .at_rest = Vector(layout.block() + layout.amplitude_block() + row),
          .zeros = Vector(row),
          .ends = std::vector<const double*>(spans_.length)};
}

/// An hour of one thread's groups. All threads meet once a span: until then each marches its groups at the
/// linearisation inlet, after that each closes the loop by itself, from the same figures. `given` is on another
/// thread's stack, which is written to meanwhile: copied.
template <class Ground>
void FusedStepper<Ground>::march(const Hour& given, Workers::Team& team) {
  const Hour hour = given;
  ThreadWorkspace& own = *own_[team.index()];
  HourMarch<Ground> part(problem_, multirate_, group_march_, spans_, hour, own);
  part.prepare();
  for (std::size_t first = 0; first < spans_.stages; first += spans_.length) {
    part.sweep(first);
    publish(first, own);
    team.barrier();
    part.close(first, exchange_);
  }
  part.finish(exchange_);
}

/// The span's outlets, and with the hour's first span what its bores respond with.
template <class Ground>
void FusedStepper<Ground>::publish(std::size_t first, const ThreadWorkspace& own) {
  if (own.part.from == own.part.end) return;
  exchange_.publish_outlets(first, own.part.from, own.outlets);
  if (first > 0) return;
  for (std::size_t g = own.part.from; g < own.part.end; ++g) {
    const Bore* bore = own.bores.of(g);
    exchange_.response(g) = bore && bore->line.factors().flows ? &bore->response : nullptr;
  }
}

}  // namespace

std::unique_ptr<Stepper> make_fused_stepper(const Problem& problem, const Multirate& multirate, Workers& workers,
                                            const Kernels& kernels, ClosureInterval closure) {
  const bool small = problem.groups.size() < 2 * groups_worth_a_thread;
  const bool stages = closure == ClosureInterval::every_stage || (closure == ClosureInterval::automatic && small);
  if (multirate.two_rates()) {
    return std::make_unique<FusedStepper<ModeGround>>(problem, multirate, workers, kernels, stages);
  }
  return std::make_unique<FusedStepper<RingGround>>(problem, multirate, workers, kernels, stages);
}

}  // namespace stillground::march
