#include "engine/march/fused/mode_ground.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/march/fused/rows.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march::fused {

namespace {

constexpr std::size_t eight = 8;

/// A step of an amplitude of decay rate r [1/s], p_i the heat of its two stages times h/(rho c):
///   Y_1 = d (x + gamma p_1),   Y_2 = d (s_o x + s_f Y_1 + gamma p_2),   d = 1/(1 + gamma h r),
/// s_o = second_of_old, s_f = second_of_first (ars222); so that
///   Y_2 = decay x + first_gain p_1 + second_gain p_2,   Y_1 = first_stage x + second_gain p_1.
struct Step {
  double decay, first_gain, second_gain, first_stage;

  Step(double rate, double step) {
    using ars222::gamma, ars222::second_of_first, ars222::second_of_old;
    const double d = 1 / (1 + gamma * step * rate);
    first_stage = d;
    first_gain = second_of_first * gamma * d * d;
    second_gain = gamma * d;
    decay = rate == 0 ? 1 : d * (second_of_old + second_of_first * d);  // heat is kept to the last bit
  }
};

}  // namespace

ModeGround::ModeGround(const Problem& problem, const Multirate& multirate, const Kernels& kernels)
    : problem_(problem),
      layout_(problem, multirate),
      step_(multirate.step),
      axial_steps_(multirate.slow.axial_steps),
      kernels_(kernels.modes),
      macro_kernels_(kernels.macro_step),
      row_(layout_.row()),
      wall_response_(row_),
      second_wall_(row_),
      per_heat_(row_),
      uniform_run_(uniform_runs(problem, eight)),
      // Mode 0 is the sum over all rings, each times its area.
      through_surface_(problem.axial[0] * Multirate::macro_step / 2 / multirate.slow.axial_steps) {
  const RadialModes modes(problem.grid);
  const ReducedModes reduced_modes(modes, multirate.slow.count, Multirate::reduced_modes);
  fill_modes(modes, reduced_modes);
  fill_macro_step(modes, reduced_modes);
}

void ModeGround::fill_modes(const RadialModes& modes, const ReducedModes& reduced_modes) {
  std::vector<double> rates = reduced_modes.rates, weights = reduced_modes.weights;
  for (std::size_t m = reduced_modes.slow; m < modes.size(); ++m) {
    rates.push_back(modes.rates()[m]);
    weights.push_back(modes.weights()[m]);
  }
  const std::size_t count = rates.size();
  of_layer_.assign(row_ * count * 5, 0.0);
  of_mode_.assign(of_layer_.size(), 0.0);
  for (std::size_t k = 0; k < problem_.nz(); ++k) {
    const model::Solid& solid = problem_.grid.solid[k];
    const double per_heat = step_ / solid.heat_capacity;
    per_heat_[k] = per_heat;
    for (std::size_t m = 0; m < count; ++m) {
      const Step step(solid.diffusivity() * rates[m], step_);
      const std::array<double, 5> factors = {step.decay, step.first_gain, step.second_gain,
                                             weights[m] * step.first_stage, weights[m] * step.decay};
      for (std::size_t f = 0; f < factors.size(); ++f) {
        of_layer_[(k * count + m) * 5 + f] = of_mode_[(m * 5 + f) * row_ + k] = factors[f];
      }
      wall_response_[k] += weights[m] * step.second_gain * per_heat;
      second_wall_[k] += weights[m] * step.first_gain * per_heat;
    }
  }
  modes_ = {.modes = count,
            .row = row_,
            .uniform_run = uniform_run_.data(),
            .of_layer = of_layer_.data(),
            .of_mode = of_mode_.data(),
            .per_heat = per_heat_.data(),
            .second_wall = second_wall_.data()};
}

void ModeGround::fill_macro_step(const RadialModes& modes, const ReducedModes& reduced_modes) {
  share_ = reduced_modes.share;
  start_ = reduced_modes.start;
  std::vector<double> rates(modes.rates().begin(),
                            modes.rates().begin() + static_cast<std::ptrdiff_t>(reduced_modes.slow));
  rates.insert(rates.end(), reduced_modes.rates.begin(), reduced_modes.rates.end());
  rates.insert(rates.end(), modes.rates().begin() + static_cast<std::ptrdiff_t>(reduced_modes.slow),
               modes.rates().end());
  decay_.assign(rates.size() * row_, 0.0);
  const double steps = Multirate::macro_step / step_;
  for (std::size_t m = 0; m < rates.size(); ++m) {
    for (std::size_t k = 0; k < problem_.nz(); ++k) {
      const Step step(problem_.grid.solid[k].diffusivity() * rates[m], step_);
      decay_[m * row_ + k] = std::pow(step.decay, steps);
    }
  }
  const AxialFactors axial(problem_);
  const double seconds = Multirate::macro_step / 2 / axial_steps_;
  above_ = scaled(axial.above(), seconds);
  below_ = scaled(axial.below(), seconds);
  for (std::size_t m = 0; m < modes.size(); ++m) weight_.push_back(modes.weights()[m] / reduced_modes.weights[0]);
  steady_.assign((modes.size() - reduced_modes.slow) * row_, 0.0);
  for (std::size_t m = reduced_modes.slow; m < modes.size(); ++m) {
    for (std::size_t k = 0; k < problem_.nz(); ++k) {
      const double rate = problem_.grid.solid[k].diffusivity() * modes.rates()[m];
      steady_[(m - reduced_modes.slow) * row_ + k] = 1 / (Multirate::macro_step / 2 * rate);
    }
  }
  // Quick modes end near the bore: beyond, they are noughts that need not be added.
  constexpr double nought = 1e-13;
  for (std::size_t i = 0; i < modes.size(); ++i) {
    std::size_t active = 0;
    for (std::size_t m = 0; m < modes.size(); ++m) {
      shape_.push_back(modes.shape(i, m));
      if (std::abs(shape_.back()) > nought * modes.shape(0, m)) active = m + 1;
    }
    active_modes_.push_back(active);
  }
  for (std::size_t i = modes.size() - 1; i-- > 0;) active_modes_[i] = std::max(active_modes_[i], active_modes_[i + 1]);
  macro_ = {.row = row_,
            .slow = reduced_modes.slow,
            .reduced_modes = Multirate::reduced_modes,
            .modes = modes.size(),
            .steps = steps,
            .decay = decay_.data(),
            .share = share_.data(),
            .start = start_.data(),
            .weight = weight_.data(),
            .steady = steady_.data(),
            .axial_steps = axial_steps_,
            .above = above_.data(),
            .below = below_.data(),
            .shape = shape_.data(),
            .active_modes = active_modes_.data()};
}

LayerRange ModeGround::layers(const Group& group) const {
  return {group.first / eight * eight, (group.end + eight - 1) / eight * eight};
}

double* ModeGround::inwards(std::size_t stage, const GroupView& view, double&) const {
  const auto [from, end] = layers(view.group);
  double *first = scratch(view, 0), *second = scratch(view, 1);
  if (stage == 0) kernels_.read(modes_, from, end, stepped(view), first, second);
  if (stage % 2 == 0) return first;
  kernels_.second_wall(modes_, from, end, second, scratch(view, 2), innermost(view));
  return innermost(view);
}

void ModeGround::outwards(std::size_t stage, const GroupView& view, const double* heat, double&) const {
  const auto [from, end] = layers(view.group);
  double *first = scratch(view, 0), *second = scratch(view, 1), *first_heat = scratch(view, 2);
  if (stage % 2 == 0) {
    std::copy(heat + from, heat + end, first_heat + from);
  } else {
    const double* ramp = view.amplitudes + macro_.ramp_row();
    kernels_.step(modes_, from, end, stepped(view), ramp, first_heat, heat, first, second);
  }
}

/// Strang's splitting (1968, SIAM Journal on Numerical Analysis 5): half of a macro-step's axial conduction of the slow
/// modes before it, half after it; others look at the ground between the halves. That of the quick modes, which forget
/// within the macro-step, is held throughout.
void ModeGround::start_macro_step(const GroupView& view, double& lost) const {
  const auto [from, end] = layers(view.group);
  lost += through_surface_ * macro_kernels_.start(macro_, from, end, view.amplitudes, view.scratch);
}

void ModeGround::end_macro_step(const GroupView& view, bool midnight, double& lost) const {
  const auto [from, end] = layers(view.group);
  macro_kernels_.end(macro_, from, end, view.amplitudes);
  lost += through_surface_ * macro_kernels_.conduct(macro_, view.amplitudes);
  if (midnight) macro_kernels_.rises(macro_, view.amplitudes, innermost(view));
}

}  // namespace stillground::march::fused
