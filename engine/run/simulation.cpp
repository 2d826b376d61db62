#include "engine/run/simulation.hpp"

#include <algorithm>
#include <cmath>
#include <thread>

#include "engine/ground/steady.hpp"
#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/run/observe.hpp"

namespace stillground::run {

namespace {

constexpr double ice = 273.15;

}  // namespace

int useful_threads(const Assembly& assembly, int asked) {
  const int machine = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  return std::clamp(asked > 0 ? asked : machine, 1, static_cast<int>(assembly.groups.size()));
}

Simulation::Simulation(const Assembly& assembly, int threads)
    : assembly_(assembly),
      workers_(useful_threads(assembly, threads)),
      regimes_(assembly.scenario, assembly.fluid, assembly.problem.grid),
      stepper_(march::make_arkode_stepper(assembly.problem, workers_)),
      state_(initial_state(assembly.problem)) {
  const march::Problem& problem = assembly.problem;
  tally_.wall_heat.assign(problem.groups.size() * problem.row(), 0.0);
  if (assembly.scenario.fields == model::RecordFields::yearly) {
    tally_.rise_sum.assign(problem.groups.size() * problem.nz() * problem.nr(), 0.0);
  }
  start_year();
}

void Simulation::start_year() {
  tally_.start_year(stored_heat(assembly_.problem, assembly_.fluid, state_));
}

const Regimes::Regime& Simulation::regime_now(const loop::Demand& demand) {
  const bool flows = assembly_.scenario.flow.runs == model::Flow::Runs::always || demand.any();
  return flows ? regimes_.flowing(mean_fluid_temperature(assembly_.problem, state_)) : regimes_.standing();
}

record::Hour Simulation::march_hour() {
  if (march::refresh_due(assembly_.problem, state_)) march::refresh_neighbours(assembly_.problem, state_, workers_);
  const loop::Demand demand = assembly_.loads.hour(tally_.hour);
  const Regimes::Regime& regime = regime_now(demand);
  const march::HourMeans means = stepper_->advance(state_, {demand, &regime.march}, tally_.wall_heat);
  ++tally_.hour;
  add_up(demand, regime, means);

  const double cooling = demand.cooling + demand.cooling_direct;
  const bool flows = regime.march.heat_rate > 0;
  const double flow = flows ? assembly_.fluid.flow_per_bore * assembly_.problem.bores() : 0.0;
  return {means.eft, means.lft, flow, means.to_ground, demand.heating, cooling, means.power};
}

void Simulation::add_up(const loop::Demand& demand, const Regimes::Regime& regime, const march::HourMeans& means) {
  tally_.put_in += means.to_ground * seconds_per_hour;
  tally_.surface += means.surface * seconds_per_hour;
  tally_.coldest_fluid = std::min({tally_.coldest_fluid, means.eft, means.lft});
  if (std::min(means.eft, means.lft) < ice) {
    tally_.coldest_wall = std::min(tally_.coldest_wall, coldest_wall(assembly_.problem, regime.march, state_));
  }
  if (regime.march.heat_rate > 0) {
    ++tally_.flowing_hours;
    if (regime.film == materials::Regime::laminar) ++tally_.laminar_hours;
    tally_.eft_least = std::min(tally_.eft_least, means.eft);
    tally_.eft_most = std::max(tally_.eft_most, means.eft);
  }
  const auto beyond = [&](const std::optional<loop::CopCurve>& curve) {
    return means.eft < curve->least_eft() || means.eft > curve->most_eft();
  };
  if (demand.heating > 0 && beyond(assembly_.problem.pumps.heating)) ++tally_.beyond_heating_curve;
  if (demand.cooling > 0 && beyond(assembly_.problem.pumps.cooling)) ++tally_.beyond_cooling_curve;
  if (!tally_.rise_sum.empty() && tally_.hour % 24 == 0) {
    const auto shot = snapshot();
    for (std::size_t i = 0; i < shot.rise.size(); ++i) tally_.rise_sum[i] += static_cast<double>(shot.rise[i]);
  }
}

record::Snapshot Simulation::snapshot() {
  // The wall lies between grout and ground by the resistances of standing fluid: the film has no part in that.
  return run::snapshot(assembly_.problem, regimes_.standing().march, state_);
}

record::YearMean Simulation::year_mean() const {
  record::YearMean mean;
  for (const double sum : tally_.rise_sum) mean.rise.push_back(static_cast<float>(sum / days_per_year));
  return mean;
}

record::YearBalance Simulation::year_balance() const {
  record::YearBalance balance;
  balance.in = tally_.put_in;
  balance.stored = stored_heat(assembly_.problem, assembly_.fluid, state_) - tally_.stored_at_start;
  balance.surface = tally_.surface;
  balance.deep = 0;  // bottom and outer edge are adiabatic
  balance.residual = balance.in - balance.stored - balance.surface - balance.deep;
  return balance;
}

std::vector<float> Simulation::steady_rise() const {
  const march::Problem& problem = assembly_.problem;
  const ground::Steady steady(problem.grid, assembly_.surface_film);
  std::vector<float> all;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    std::vector<double> heat(problem.nz());
    for (std::size_t k = 0; k < heat.size(); ++k) heat[k] = tally_.wall_heat[g * problem.row() + k] / seconds_per_year;
    for (const double rise : steady.rise(heat)) all.push_back(static_cast<float>(rise));
  }
  return all;
}

}  // namespace stillground::run
