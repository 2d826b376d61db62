#pragma once

#include <algorithm>

#include "engine/march/fused/group_view.hpp"
#include "engine/march/fused/kernels.hpp"
#include "engine/march/fused/span.hpp"
#include "engine/march/fused/thread_workspace.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march::fused {

/// Marches one group, its bore and its ground: an implicit stage in two halves, and the response to the inlet. `Ground`
/// is RingGround or ModeGround. Const, shared by all threads.
///
/// Stages are counted from 0 on, two a step (ars222: stage 1 and 2), h is the step.
template <class Ground>
class GroupMarch {
 public:
  GroupMarch(const Problem& problem, const Multirate& multirate, const Kernels& kernels)
      : problem_(problem),
        layout_(problem, multirate),
        steps_(multirate.step, true),
        kernels_(kernels.bore),
        lanes_(kernels.lanes),
        pair_(problem.passes - 1),
        ground_(problem, multirate, kernels) {}

  const Ground& ground() const { return ground_; }
  const StateLayout& layout() const { return layout_; }

  /// A bore's factors for stages with kappa = gamma h.
  void make(const Group& group, const FlowRegime& regime, PackedBore& line) const {
    line.make(problem_, group, regime, ground_.wall_response(), ars222::gamma * steps_.step, lanes_);
  }

  /// The first half, Y = rhs + gamma h f_I(Y) eliminated from the outer ring to the wall and from the toe to the top,
  ///   T_out = gain T_in + line.outlet(up).
  /// `surface` += heat that leaves through the surface [J].
  PartialStage eliminate_upward(const PackedBore& line, const GroupView& view, std::size_t stage,
                                const Outside& outside, double* work, double& surface) const {
    PartialStage partial{ground_.inwards(stage, view, surface), {}};
    kernels_.eliminate_upward[pair_](line.factors(), view.y, outside, partial.innermost, work, partial.up.data());
    return partial;
  }

  /// The second half, with T_in = `inlet` substituted from the top down and from the wall outwards. After a step's
  /// first stage the in-bore rows hold second_of_old y + second_of_first Y, what its second stage starts from; after
  /// that, Y. `heat` += h b_i q_w [J/m].
  void substitute_downward(const PackedBore& line, const GroupView& view, std::size_t stage,
                           const PartialStage& partial, double inlet, double* work, double* heat,
                           double& surface) const {
    const bool first = stage % 2 == 0;
    const double old = first ? ars222::second_of_old : 0, fresh = first ? ars222::second_of_first : 1;
    kernels_.substitute_downward[pair_](line.factors(), work, line.inlets(inlet, partial.up).data(),
                                        steps_.seconds(stage), old, fresh, view.y, partial.innermost, heat);
    ground_.outwards(stage, view, work, surface);
  }

  /// g_{s,t} and r_t for t = 0, 1 (see InletResponse): marches a group from rest through a span, its inlet 1 K in stage
  /// t and 0 in all others, nothing outside.
  void form_response(const Group& group, std::size_t span, ThreadWorkspace& own, Bore& bore) const {
    const std::size_t row = layout_.row(), in_y = y_rows() * row, stepped = ground_.stepped_rows() * row;
    if (bore.response.empty()) bore.response.resize(span, in_y + stepped + row);
    double* heat = own.at_rest.data() + layout_.block() + layout_.amplitude_block();
    const GroupView view{group, own.at_rest.data(), own.at_rest.data() + layout_.block(), own.scratch.data()};
    const double* zeros = own.zeros.data();
    for (std::size_t of : {0, 1}) {
      std::fill(view.y, view.y + in_y, 0.0);
      std::fill(ground_.stepped(view), ground_.stepped(view) + stepped, 0.0);
      std::fill(heat, heat + row, 0.0);
      double surface = 0;
      for (std::size_t s = 0; s < span; ++s) {
        const double inlet = s == of ? 1 : 0;
        const auto partial = eliminate_upward(bore.line, view, s, {zeros, zeros, zeros, 0}, own.work.data(), surface);
        substitute_downward(bore.line, view, s, partial, inlet, own.work.data(), heat, surface);
        bore.response.outlet_from(of, s) = bore.line.outlet(partial.up) + bore.line.gain() * inlet;
        if (s % 2 == 0) continue;
        double* end = bore.response.end(of, s / 2 + 1);
        end = std::copy(view.y, view.y + in_y, end);
        end = std::copy(ground_.stepped(view), ground_.stepped(view) + stepped, end);
        std::copy(heat, heat + row, end);
        bore.response.lost(of, s / 2 + 1) = surface;
      }
    }
  }

  /// y_end = y_end* + sum_t r_t D_t over the stages t of the span, D = `inlets`: rows of y, amplitudes, wall heat.
  void superpose(const InletResponse& response, const GroupView& view, std::size_t span, const double* inlets,
                 double* heat, double& surface, std::vector<const double*>& ends) const {
    const auto [from, end] = ground_.layers(view.group);
    const std::size_t row = layout_.row(), first = from, last = end;
    for (std::size_t of = 0; of < span; ++of) {
      ends[of] = response.end_of_span(of);
      surface += response.lost_in_span(of) * inlets[of];
    }
    const auto add = [&](std::size_t rows, double* to) {
      kernels_.superpose(rows, row, first, last, span, ends.data(), inlets, to);
      for (const double*& values : ends) values += rows * row;
    };
    add(y_rows(), view.y);
    add(ground_.stepped_rows(), ground_.stepped(view));
    add(1, heat);
  }

 private:
  /// Rows of y that a span changes.
  std::size_t y_rows() const { return layout_.ground_row() + ground_.ground_rows(); }

  const Problem& problem_;
  StateLayout layout_;
  Spans steps_;  // of which the stages' weights count here
  const BoreKernels& kernels_;
  std::size_t lanes_;  // of the kernels
  std::size_t pair_;   // which of the kernels, by passes
  Ground ground_;
};

}  // namespace stillground::march::fused
