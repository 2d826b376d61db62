#include "engine/simulation/simulation.hpp"

#include <algorithm>
#include <cmath>
#include <thread>
#include <utility>

#include "engine/base/temperature.hpp"
#include "engine/ground/steady.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/march/ambient.hpp"
#include "engine/march/fused/stepper.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/duties.hpp"
#include "engine/simulation/group_deviation.hpp"
#include "engine/simulation/hour_summary.hpp"
#include "engine/simulation/make_stepper.hpp"

namespace stillground::simulation {

int useful_threads(const assembly::Assembly& assembly, int asked) {
  const int machine = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  const std::size_t worth = assembly.groups.size() / march::groups_worth_a_thread;
  const int most = static_cast<int>(std::max<std::size_t>(1, worth));
  return asked > 0 ? std::clamp(asked, 1, static_cast<int>(assembly.groups.size())) : std::clamp(machine, 1, most);
}

Simulation::Simulation(const assembly::Assembly& assembly, int threads, std::vector<long> deviation_hours)
    : assembly_(assembly),
      workers_(useful_threads(assembly, threads)),
      phases_(assembly),
      regimes_(assembly.scenario, assembly.fluid, assembly.problem.grid, assembly.sections),
      stepper_(make_stepper(assembly, workers_)),
      state_(initial_state(assembly.problem, assembly.multirate)),
      peak_(std::max(assembly.loads.peak(), 1e-9)),
      flows_(assembly.problem.groups.size()),
      deviation_hours_(std::move(deviation_hours)) {
  const march::Problem& problem = assembly.problem;
  statistics_.wall_heat.assign(problem.groups.size() * march::StateLayout(problem).row(), 0.0);
  if (assembly.scenario.fields == model::RecordFields::yearly) {
    statistics_.rise_sum.assign(problem.groups.size() * problem.nz() * problem.nr(), 0.0);
  }
  start_year();
}

void Simulation::start_year() {
  statistics_.start_year(stored_heat(assembly_.problem, assembly_.fluid, state_));
}

void Simulation::open_bores() {
  for (std::size_t g = 0; g < assembly_.problem.groups.size(); ++g) {
    if (!phases_.opens(g, state_.time)) continue;
    // What a new bore brings along, grout and fluid as warm as the ground, is no heat of the field's.
    const double before = stored_heat(assembly_.problem, assembly_.fluid, state_);
    fluid_.reset();
    fill_bore(assembly_.problem, assembly_.multirate, state_, g);
    statistics_.stored_at_start += stored_heat(assembly_.problem, assembly_.fluid, state_) - before;
  }
}

double Simulation::fluid_temperature() {
  if (!fluid_) {
    const march::Problem& problem = assembly_.problem;
    const march::StateLayout layout(problem);
    fluid_ = march::mean_fluid(
        problem.groups.size(), [&](std::size_t g) { return phases_.drilled(g, state_.time); },
        [&](std::size_t g) { return march::fluid_of(problem, g, state_.y.data() + g * layout.block()); });
  }
  return *fluid_;
}

/// The regime of a group through which fluid flows; those of one flow class share it.
const assembly::FlowRegimes::Regime* Simulation::flow_of(std::size_t group, double flow, double temperature,
                                                         Hour& hour) {
  const std::size_t slot = phases_.flow_class(group);
  const assembly::FlowRegimes::Regime*& regime = flows_[slot];
  if (!regime) {
    regime = &regimes_.flowing(temperature, flow, slot);
    if (hour.reynolds == 0 || regime->reynolds < hour.reynolds) hour.reynolds = regime->reynolds;
  }
  const march::Group& bores = assembly_.problem.groups[group];
  if (bores.returns) hour.flow += bores.members * flow;
  return regime;
}

Simulation::Hour Simulation::prepare_hour() {
  const std::size_t groups = assembly_.problem.groups.size();
  Hour hour;
  hour.forcing.demand = assembly_.loads.hour(statistics_.hour);
  const double part = loop::flow_part(assembly_.scenario.flow, hour.forcing.demand.size() / peak_);
  const double temperature = part > 0 ? fluid_temperature() : 0;
  const double concentration = phases_.concentration(state_.time);
  std::fill(flows_.begin(), flows_.end(), nullptr);
  const bool all_alike = phases_.all_alike();
  for (std::size_t g = 0; g < groups; ++g) {
    const march::FlowRegime* regime = nullptr;
    if (phases_.drilled(g, state_.time)) {
      const bool flows = part > 0 && phases_.works(g, state_.time);
      regime = flows ? &flow_of(g, part * phases_.full_flow(g, concentration), temperature, hour)->march
                     : &regimes_.standing().march;
    }
    if (all_alike) {
      hour.forcing.regime = regime;
    } else {
      hour.forcing.own.push_back(regime);
    }
  }
  return hour;
}

record::Hour Simulation::march_hour() {
  const march::Problem& problem = assembly_.problem;
  if (march::update_due(problem, assembly_.multirate, state_)) {
    march::update_neighbours(problem, assembly_.multirate, state_, workers_);
  }
  open_bores();
  const Hour hour = prepare_hour();
  const march::HourMeans means = stepper_->advance(state_, hour.forcing, statistics_.wall_heat);
  ++statistics_.hour;
  fluid_ = means.fluid;
  last_ = hour.forcing;
  add_up(hour, means);
  if (std::binary_search(deviation_hours_.begin(), deviation_hours_.end(), statistics_.hour)) {
    statistics_.group_deviation = std::max(statistics_.group_deviation, group_deviation(assembly_, state_, workers_));
  }
  record::Hour result;
  result.eft = means.eft;
  result.lft = means.lft;
  result.flow = hour.flow;
  result.heat_to_ground = means.to_ground;
  result.power = means.power;
  enter_duties(result, hour.forcing.demand, assembly_.problem.pumps);
  return result;
}

std::vector<bool> Simulation::drilled() const {
  std::vector<bool> there;
  for (std::size_t g = 0; g < assembly_.problem.groups.size(); ++g) there.push_back(phases_.drilled(g, state_.time));
  return there;
}

void Simulation::add_up(const Hour& hour, const march::HourMeans& means) {
  statistics_.put_in += means.to_ground * seconds_per_hour;
  statistics_.turned_over += std::abs(means.to_ground) * seconds_per_hour;
  statistics_.surface += means.surface * seconds_per_hour;
  if (std::min(means.eft, means.lft) < zero_celsius) {
    statistics_.coldest_wall =
        std::min(statistics_.coldest_wall, coldest_wall(assembly_.problem, assembly_.multirate, hour.forcing, state_));
  }
  update(statistics_, {means.eft, means.lft, hour.flow > 0, hour.reynolds}, hour.forcing.demand,
         assembly_.problem.pumps);
  if (!statistics_.rise_sum.empty() && statistics_.hour % 24 == 0) {
    const auto shot = snapshot();
    for (std::size_t i = 0; i < shot.rise.size(); ++i) statistics_.rise_sum[i] += static_cast<double>(shot.rise[i]);
  }
}

record::Snapshot Simulation::snapshot() {
  return simulation::snapshot(assembly_.problem, assembly_.multirate, regimes_.standing().march, last_, state_,
                              drilled());
}

WallExtremes Simulation::walls() const {
  return wall_extremes(assembly_.problem, assembly_.multirate, regimes_.standing().march, state_, drilled());
}

record::YearMean Simulation::year_mean() const {
  record::YearMean mean;
  for (const double sum : statistics_.rise_sum) mean.rise.push_back(static_cast<float>(sum / days_per_year));
  return mean;
}

record::YearBalance Simulation::year_balance() const {
  record::YearBalance balance;
  balance.in = statistics_.put_in;
  balance.stored = stored_heat(assembly_.problem, assembly_.fluid, state_) - statistics_.stored_at_start;
  balance.surface = statistics_.surface;
  balance.deep = 0;  // bottom and outer edge are adiabatic
  balance.residual = balance.in - balance.stored - balance.surface - balance.deep;
  return balance;
}

std::vector<float> Simulation::steady_rise() const {
  const march::Problem& problem = assembly_.problem;
  const ground::Steady steady(problem.grid, assembly_.surface_film);
  const std::size_t row = march::StateLayout(problem).row();
  std::vector<float> all;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    std::vector<double> heat(problem.nz());
    for (std::size_t k = 0; k < heat.size(); ++k) heat[k] = statistics_.wall_heat[g * row + k] / seconds_per_year;
    for (const double rise : steady.rise(heat)) all.push_back(static_cast<float>(rise));
  }
  return all;
}

}  // namespace stillground::simulation
