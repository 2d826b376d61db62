#pragma once

#include <algorithm>

#include "engine/march/fused/group_march.hpp"
#include "engine/march/fused/hour_means.hpp"
#include "engine/march/fused/prefetch.hpp"
#include "engine/march/fused/span.hpp"

namespace stillground::march::fused {

/// An hour of the field, as all threads see it.
struct Hour {
  State& state;  ///< each thread writes its own groups' blocks
  const Forcing& forcing;
  Vector& wall_heat;
  double heat_rate = 0;  ///< W of the whole field [W/K]

  bool flows() const { return heat_rate > 0; }
};

/// One thread's part of an hour: its groups, span by span.
template <class Ground>
class HourMarch {
 public:
  HourMarch(const Problem& problem, const Multirate& multirate, const GroupMarch<Ground>& group_march,
            const Spans& spans, const Hour& hour, ThreadWorkspace& own)
      : problem_(problem),
        multirate_(multirate),
        group_march_(group_march),
        layout_(group_march.layout()),
        spans_(spans),
        hour_(hour),
        own_(own) {}

  /// T0(z, t) of every stage; factors and responses of the hour's regimes.
  void prepare();

  /// Marches the groups through the span from stage `first` on at the linearisation inlet; of a span of one stage only
  /// its first half. Writes their outlets.
  void sweep(std::size_t first) {
    for (std::size_t g = own_.part.from; g < own_.part.end; ++g) sweep(first, g);
  }

  /// Closes the loop in each stage of the span, once all threads have published what they swept; then what the true
  /// inlets change, or the stage's second half.
  void close(std::size_t first, const ExchangeBuffer& exchange);

  /// The macro-step that ends with the hour; what the groups' hours came to.
  void finish(ExchangeBuffer& exchange) {
    for (std::size_t g = own_.part.from; g < own_.part.end; ++g) finish(g, exchange);
  }

 private:
  void sweep(std::size_t first, std::size_t g);
  void complete(std::size_t stage, std::size_t g, double inlet);
  void finish(std::size_t g, ExchangeBuffer& exchange);
  Outside outside(std::size_t g, std::size_t stage) const;

  /// Work space of a group: the same of all, or of each its own where stages are left half done.
  std::size_t place(std::size_t g) const { return spans_.stage_by_stage() ? g - own_.part.from : 0; }
  double* work(std::size_t g) const {
    return own_.work.data() + place(g) * work_rows(layout_.streams()) * layout_.row();
  }
  GroupView view(std::size_t g) const {
    Vector& amplitudes = hour_.state.amplitudes;
    return {problem_.groups[g], hour_.state.y.data() + g * layout_.block(),
            amplitudes.empty() ? nullptr : amplitudes.data() + g * layout_.amplitude_block(),
            own_.scratch.data() + place(g) * group_march_.ground().scratch_rows() * layout_.row()};
  }
  GroupProgress& progress(std::size_t g) const { return own_.groups[g - own_.part.from]; }
  double* wall_heat(std::size_t g) const { return hour_.wall_heat.data() + g * layout_.row(); }

  const Problem& problem_;
  const Multirate& multirate_;
  const GroupMarch<Ground>& group_march_;
  const StateLayout& layout_;
  const Spans& spans_;
  const Hour& hour_;
  ThreadWorkspace& own_;
};

template <class Ground>
void HourMarch<Ground>::prepare() {
  if (own_.part.from > 0) prefetch(hour_.forcing.of(own_.part.from));
  for (std::size_t s = 0; s < spans_.stages; ++s) {
    problem_.undisturbed.at(spans_.time(hour_.state.time, s),
                            {own_.undisturbed.data() + s * layout_.row(), layout_.nz});
  }
  own_.sums = {};
  std::fill(own_.groups.begin(), own_.groups.end(), GroupProgress{});
  const auto make = [&](Bore& bore, const Group& group, const FlowRegime& regime) {
    group_march_.make(group, regime, bore.line);
    if (regime.heat_rate <= 0) return;
    if (!spans_.stage_by_stage()) return group_march_.form_response(group, spans_.length, own_, bore);
    bore.response.resize(1, 0);
    bore.response.outlet_from(0, 0) = bore.line.gain();
  };
  own_.bores.prepare(hour_.forcing, own_.part.from, own_.part.end, make);
}

/// Without the group's own heat its wall would be at T0 + N + a (N - N_before), a = (t - t_N)/update interval: the
/// neighbours' sum N of the last update t_N and the one before, extrapolated.
template <class Ground>
Outside HourMarch<Ground>::outside(std::size_t g, std::size_t stage) const {
  const std::size_t row = layout_.row();
  const State& state = hour_.state;
  return {.undisturbed = own_.undisturbed.data() + stage * row,
          .now = state.neighbours.data() + g * row,
          .before = state.neighbours_before.data() + g * row,
          .ahead = (spans_.time(state.time, stage) - state.updated) / multirate_.update_interval};
}

/// T_out* = line.outlet(up) + gain T*, T* the linearisation inlet.
template <class Ground>
void HourMarch<Ground>::sweep(std::size_t first, std::size_t g) {
  const Bore* bore = own_.bores.of(g);
  if (!bore) return;
  const GroupView here = view(g);
  double& surface = progress(g).hour.surface;
  double* outlets = own_.outlets.data() + (g - own_.part.from) * spans_.length;
  if (first == 0 && starts_a_day(hour_.state.time)) group_march_.ground().start_macro_step(here, surface);
  for (std::size_t s = 0; s < spans_.length; ++s) {
    // Where stages go on without a break the ground counts them from the break on.
    const std::size_t stage = spans_.stage_by_stage() ? first : s;
    PartialStage& partial = progress(g).partial;
    partial = group_march_.eliminate_upward(bore->line, here, stage, outside(g, first + s), work(g), surface);
    outlets[s] = bore->line.outlet(partial.up) + bore->line.gain() * linearisation_inlet;
    if (!spans_.stage_by_stage()) complete(stage, g, linearisation_inlet);
  }
}

/// EFT = gain T_in + offset, T_in = EFT + Q(EFT)/W of the field in stage after stage; then y_end = y_end* + sum r_t
/// D_t.
template <class Ground>
void HourMarch<Ground>::close(std::size_t first, const ExchangeBuffer& exchange) {
  if (first == 0) own_.closure.set_gains(exchange, hour_.forcing);
  for (std::size_t s = 0; s < spans_.length && hour_.flows(); ++s) {
    const double share = spans_.seconds(first + s) / seconds_per_hour;
    add_stage(own_.closure.close(exchange, hour_.forcing, first, s), share, hour_.heat_rate, own_.sums);
  }
  for (std::size_t g = own_.part.from; g < own_.part.end; ++g) {
    const Bore* bore = own_.bores.of(g);
    if (!bore) continue;
    const double* inlets = own_.closure.inlets(g);
    if (spans_.stage_by_stage()) {
      complete(first, g, linearisation_inlet + inlets[0]);
    } else if (bore->line.factors().flows) {
      group_march_.superpose(bore->response, view(g), spans_.length, inlets, wall_heat(g), progress(g).hour.surface,
                             own_.ends);
    }
  }
}

/// A stage's second half. Of stagnant fluid the hour's mean at the top: sum of seconds/3600 times it.
template <class Ground>
void HourMarch<Ground>::complete(std::size_t stage, std::size_t g, double inlet) {
  GroupProgress& group = progress(g);
  group_march_.substitute_downward(own_.bores.of(g)->line, view(g), stage, group.partial, inlet, work(g), wall_heat(g),
                                   group.hour.surface);
  if (hour_.flows()) return;
  const double share = spans_.seconds(stage) / seconds_per_hour;
  const double* streams = work(g) + layout_.row() + problem_.groups[g].first;
  group.hour.topmost[0] += share * streams[layout_.down_row() * layout_.row()];
  group.hour.topmost[1] += share * streams[layout_.up_row(layout_.passes - 1) * layout_.row()];
}

template <class Ground>
void HourMarch<Ground>::finish(std::size_t g, ExchangeBuffer& exchange) {
  if (!own_.bores.of(g)) return;
  GroupHour& result = progress(g).hour;
  const GroupView here = view(g);
  const double end = hour_.state.time + seconds_per_hour;
  if (starts_a_macro_step(end)) {
    // Midnight, when others look at the ground, stands between two macro-steps. Elsewhere one begins while the memory
    // is near.
    const bool midnight = starts_a_day(end);
    group_march_.ground().end_macro_step(here, midnight, result.surface);
    if (!midnight) group_march_.ground().start_macro_step(here, result.surface);
  }
  result.fluid = fluid_of(problem_, g, here.y);
  exchange.hour(g) = result;
}

}  // namespace stillground::march::fused
