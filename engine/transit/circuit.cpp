#include "engine/transit/circuit.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "engine/assembly/median_bore.hpp"

namespace stillground::transit {

namespace {

/// Fluid passes a slice in about this time at full flow [s]: it is the delay that a slice may add or take.
constexpr double slice_time = 3;
constexpr double fewest_slices = 40, most_slices = 120;

constexpr double film_holds = 0.3;  // change of the fluid's temperature after which the film is taken anew [K]

}  // namespace

Circuit::Circuit(const assembly::Assembly& assembly) : assembly_(&assembly) {
  const model::BoreSite& like = assembly::median_bore(assembly.bores);
  choice_ = {like.top, like.depth, assembly.scenario.bore.diameter / 2, 0};
  const std::size_t streams = assembly.problem.streams();
  const auto& held = assembly.fluid.capacities.stream;
  const std::vector<double> capacity(held.begin(), held.begin() + static_cast<std::ptrdiff_t>(streams));
  leg_amount_ = *std::min_element(capacity.begin(), capacity.end()) * like.depth;
  circuit_amount_ =
      std::accumulate(capacity.begin(), capacity.end(), 0.0) * like.depth * assembly.scenario.flow.in_series;
  const double leg_time = leg_amount_ / (assembly.fluid.flow_per_bore * assembly.fluid.heat_capacity);
  choice_.slices = static_cast<std::size_t>(std::clamp(std::round(leg_time / slice_time), fewest_slices, most_slices));
  assembly::FlowRegimes regimes(assembly.scenario, assembly.fluid, assembly.problem.grid, assembly.sections);
  const auto stretches = stretches_of(assembly.problem.grid, regimes.standing().march.of_layer, choice_);
  for (int bore = 0; bore < assembly.scenario.flow.in_series; ++bore) bores_.emplace_back(choice_, stretches, capacity);
}

double Circuit::round_trip(double heat_rate) const {
  return circuit_amount_ / heat_rate;
}

void Circuit::set_ambient(double time, double warmer) {
  const ground::Grid& grid = assembly_->problem.grid;
  std::vector<double> undisturbed(grid.nz()), ambient;
  assembly_->problem.undisturbed.at(time, undisturbed);
  std::size_t layer = 0;
  for (std::size_t i = 0; i < choice_.slices; ++i) {
    const double part = (static_cast<double>(i) + 0.5) / static_cast<double>(choice_.slices);
    while (layer + 1 < grid.nz() && grid.z_faces[layer + 1] < choice_.top + part * choice_.depth) ++layer;
    ambient.push_back(undisturbed[layer] + warmer);
  }
  for (SlicedBore& bore : bores_) bore.set_ambient(ambient);
}

void Circuit::shift(double warmer) {
  for (SlicedBore& bore : bores_) bore.shift(warmer);
}

void Circuit::warm_ground(double interval, double heat) {
  for (SlicedBore& bore : bores_) bore.warm_ground(interval, heat / static_cast<double>(bores_.size()));
}

void Circuit::warm_ground_by_walls(double interval) {
  for (SlicedBore& bore : bores_) bore.warm_ground(interval);
}

Exchanges Circuit::exchanges(const march::FlowRegime& regime, double step) const {
  Exchanges list;
  const NearGround& ground = bores_.front().ground();
  for (const Stretch& stretch : ground.stretches()) {
    list.push_back(exchange_over(regime.networks[stretch.network], ground.first_resistance(stretch.solid), step));
  }
  return list;
}

void Circuit::stand(const march::FlowRegime& regime, const Pace& pace) {
  const Exchanges over = exchanges(regime, pace.interval);
  for (double second = 0; second < seconds_per_hour; second += pace.interval) {
    for (SlicedBore& bore : bores_) bore.exchange(over, pace.interval);
    pace.settles ? warm_ground(pace.interval, 0) : warm_ground_by_walls(pace.interval);
  }
}

/// Sends fluid into the first stream, what each stream lets out into the next.
void Circuit::pass(double amount, double entering) {
  const std::size_t passes = bores_.front().streams() / 2;
  for (SlicedBore& bore : bores_) {
    for (std::size_t p = 0; p < passes; ++p) {
      for (const std::size_t stream : {p, passes + p}) {
        const double leaves = bore.leaving(stream, amount);
        bore.send(stream, amount, entering);
        entering = leaves;
      }
    }
  }
}

double Circuit::fluid() const {
  double sum = 0;
  for (const SlicedBore& bore : bores_) sum += bore.fluid();
  return sum / static_cast<double>(bores_.size());
}

std::vector<double> Circuit::flow(const Drive& drive, const Pace& pace, double seconds) {
  double film_at = fluid();
  const march::FlowRegime* regime = &drive.regime(film_at);
  const double heat_rate = regime->heat_rate;
  const double slice = leg_amount_ / static_cast<double>(choice_.slices);
  const auto steps = static_cast<int>(std::ceil(pace.interval / std::max(slice / heat_rate, pace.least_step)));
  const double step = pace.interval / steps;
  Exchanges over = exchanges(*regime, step);
  SlicedBore& last = bores_.back();
  std::vector<double> means;
  for (double second = 0; second < seconds; second += pace.interval) {
    if (pace.film_follows && std::abs(fluid() - film_at) > film_holds) {
      film_at = fluid();
      over = exchanges(drive.regime(film_at), step);
    }
    double sum = 0, given = 0;
    for (int n = 0; n < steps; ++n) {
      for (SlicedBore& bore : bores_) bore.exchange(over, step);
      const double eft = last.leaving(last.streams() - 1, heat_rate * step);
      const double heat = drive.heat(second + (n + 0.5) * step, eft);
      pass(heat_rate * step, eft + heat / heat_rate);
      sum += eft / steps, given += heat / steps;
    }
    pace.settles ? warm_ground(pace.interval, given) : warm_ground_by_walls(pace.interval);
    means.push_back(sum);
  }
  return means;
}

}  // namespace stillground::transit
