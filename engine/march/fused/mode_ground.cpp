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

/// What a step does to an amplitude of decay rate `rate` [1/s]: Y_1 = d (x + gamma p_1) and Y_2 = d (second_of_old x +
/// second_of_first Y_1 + gamma p_2), d = 1/(1 + gamma h rate), p the heat of each stage times h/(rho c).
struct Step {
  double keeps, first_gain, second_gain, first_stage;

  Step(double rate, double step) {
    using ars222::gamma, ars222::second_of_first, ars222::second_of_old;
    const double d = 1 / (1 + gamma * step * rate);
    first_stage = d;
    first_gain = second_of_first * gamma * d * d;
    second_gain = gamma * d;
    keeps = rate == 0 ? 1 : d * (second_of_old + second_of_first * d);  // heat is kept to the last bit
  }
};

}  // namespace

ModeGround::ModeGround(const Problem& problem, const Kernels& kernels)
    : problem_(problem),
      kernels_(kernels.modes),
      row_(problem.row()),
      wall_response_(row_),
      second_wall_(row_),
      per_heat_(row_),
      alike_(alike(problem, eight)),
      // Mode 0 is the sum over all rings, each times its area.
      through_surface_(problem.axial[0] * Clocks::slow_step / 2 / problem.clocks.axial_steps) {
  const RadialModes modes(problem.grid);
  const StandIns stand_ins(modes, problem.clocks.slow, Clocks::stand_ins);
  fill_modes(modes, stand_ins);
  fill_turn(modes, stand_ins);
}

void ModeGround::fill_modes(const RadialModes& modes, const StandIns& stand_ins) {
  std::vector<double> rates = stand_ins.rates, weights = stand_ins.weights;
  for (std::size_t m = stand_ins.slow; m < modes.size(); ++m) {
    rates.push_back(modes.rates()[m]);
    weights.push_back(modes.weights()[m]);
  }
  const std::size_t count = rates.size();
  of_layer_.assign(row_ * count * 5, 0.0);
  of_mode_.assign(of_layer_.size(), 0.0);
  for (std::size_t k = 0; k < problem_.nz(); ++k) {
    const model::Solid& solid = problem_.grid.solid[k];
    const double per_heat = problem_.step / solid.heat_capacity;
    per_heat_[k] = per_heat;
    for (std::size_t m = 0; m < count; ++m) {
      const Step step(solid.diffusivity() * rates[m], problem_.step);
      const std::array<double, 5> factors = {step.keeps, step.first_gain, step.second_gain,
                                             weights[m] * step.first_stage, weights[m] * step.keeps};
      for (std::size_t f = 0; f < factors.size(); ++f) {
        of_layer_[(k * count + m) * 5 + f] = of_mode_[(m * 5 + f) * row_ + k] = factors[f];
      }
      wall_response_[k] += weights[m] * step.second_gain * per_heat;
      second_wall_[k] += weights[m] * step.first_gain * per_heat;
    }
  }
  modes_ = {count, row_, alike_.data(), of_layer_.data(), of_mode_.data(), per_heat_.data(), second_wall_.data()};
}

void ModeGround::fill_turn(const RadialModes& modes, const StandIns& stand_ins) {
  share_ = stand_ins.share;
  start_ = stand_ins.start;
  std::vector<double> rates(modes.rates().begin(), modes.rates().begin() + static_cast<std::ptrdiff_t>(stand_ins.slow));
  rates.insert(rates.end(), stand_ins.rates.begin(), stand_ins.rates.end());
  rates.insert(rates.end(), modes.rates().begin() + static_cast<std::ptrdiff_t>(stand_ins.slow), modes.rates().end());
  keeps_.assign(rates.size() * row_, 0.0);
  const double steps = Clocks::slow_step / problem_.step;
  for (std::size_t m = 0; m < rates.size(); ++m) {
    for (std::size_t k = 0; k < problem_.nz(); ++k) {
      const Step step(problem_.grid.solid[k].diffusivity() * rates[m], problem_.step);
      keeps_[m * row_ + k] = std::pow(step.keeps, steps);
    }
  }
  const AxialFactors axial(problem_);
  const double seconds = Clocks::slow_step / 2 / problem_.clocks.axial_steps;
  above_ = scaled(axial.above(), seconds);
  below_ = scaled(axial.below(), seconds);
  for (std::size_t m = 0; m < modes.size(); ++m) weight_.push_back(modes.weights()[m] / stand_ins.weights[0]);
  steady_.assign((modes.size() - stand_ins.slow) * row_, 0.0);
  for (std::size_t m = stand_ins.slow; m < modes.size(); ++m) {
    for (std::size_t k = 0; k < problem_.nz(); ++k) {
      const double rate = problem_.grid.solid[k].diffusivity() * modes.rates()[m];
      steady_[(m - stand_ins.slow) * row_ + k] = 1 / (Clocks::slow_step / 2 * rate);
    }
  }
  // Quick modes end near the bore: beyond, they are noughts that need not be added.
  constexpr double nought = 1e-13;
  for (std::size_t i = 0; i < modes.size(); ++i) {
    std::size_t reaches = 0;
    for (std::size_t m = 0; m < modes.size(); ++m) {
      shape_.push_back(modes.shape(i, m));
      if (std::abs(shape_.back()) > nought * modes.shape(0, m)) reaches = m + 1;
    }
    reaches_.push_back(reaches);
  }
  for (std::size_t i = modes.size() - 1; i-- > 0;) reaches_[i] = std::max(reaches_[i], reaches_[i + 1]);
  turn_ = {row_,
           stand_ins.slow,
           Clocks::stand_ins,
           modes.size(),
           steps,
           keeps_.data(),
           share_.data(),
           start_.data(),
           weight_.data(),
           steady_.data(),
           problem_.clocks.axial_steps,
           above_.data(),
           below_.data(),
           shape_.data(),
           reaches_.data()};
}

Layers ModeGround::layers(const Group& group) const {
  return {group.first / eight * eight, (group.past + eight - 1) / eight * eight};
}

double* ModeGround::inwards(std::size_t stage, const Site& site, double&) const {
  const auto [from, past] = layers(site.group);
  double *first = scratch(site, 0), *second = scratch(site, 1);
  if (stage == 0) kernels_.read(modes_, from, past, stepped(site), first, second);
  if (stage % 2 == 0) return first;
  kernels_.second_wall(modes_, from, past, second, scratch(site, 2), innermost(site));
  return innermost(site);
}

void ModeGround::outwards(std::size_t stage, const Site& site, const double* heat, double&) const {
  const auto [from, past] = layers(site.group);
  double *first = scratch(site, 0), *second = scratch(site, 1), *first_heat = scratch(site, 2);
  if (stage % 2 == 0) {
    std::copy(heat + from, heat + past, first_heat + from);
  } else {
    const double* ramp = site.amplitudes + turn_.ramp_row();
    kernels_.step(modes_, from, past, stepped(site), ramp, first_heat, heat, first, second);
  }
}

/// Strang's splitting (1968, SIAM Journal on Numerical Analysis 5): half of a turn's axial conduction of the slow modes
/// before it, half after it; what is told of the ground is between the halves. That of the quick modes, which forget
/// within the turn, is held throughout.
void ModeGround::start_turn(const Site& site, double& lost) const {
  const auto [from, past] = layers(site.group);
  lost += through_surface_ * kernels_.start_turn(turn_, from, past, site.amplitudes, site.scratch);
}

void ModeGround::end_turn(const Site& site, bool midnight, double& lost) const {
  const auto [from, past] = layers(site.group);
  kernels_.end_turn(turn_, from, past, site.amplitudes);
  lost += through_surface_ * kernels_.conduct(turn_, site.amplitudes);
  if (midnight) kernels_.rises(turn_, site.amplitudes, innermost(site));
}

}  // namespace stillground::march::fused
