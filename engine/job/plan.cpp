#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>

#include "engine/bore/loop_type.hpp"
#include "engine/field/layout.hpp"
#include "engine/forecast/error_estimate.hpp"
#include "engine/forecast/merging.hpp"
#include "engine/job/cautions.hpp"
#include "engine/job/plan.hpp"
#include "engine/job/plan_parts.hpp"
#include "engine/job/warnings.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/materials/fluid.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::job {

namespace {

constexpr int trial_hours = 72;

void describe_field(const assembly::Assembly& assembly, Plan& plan) {
  const model::Bore& bore = assembly.scenario.bore;
  plan.bores = static_cast<int>(assembly.bores.size());
  plan.groups = static_cast<int>(assembly.groups.size());
  plan.equal_groups = static_cast<int>(assembly.equal_groups);
  plan.group_error = assembly.merges() ? assembly.scenario.run.group_error : 0;
  for (const auto& site : assembly.bores) plan.active_length += site.depth;
  plan.drill_length = assembly::drill_length(assembly);
  const auto nearest = field::nearest_distances(assembly.bores);
  plan.nearest_spacing = nearest.empty() ? 0.0 : *std::min_element(nearest.begin(), nearest.end());
  const bore::Amounts amounts = bore::loop_type(bore.loop).amounts(bore);
  plan.pipe_length = amounts.pipe * plan.active_length;
  plan.fluid_volume = amounts.fluid * plan.active_length;
  plan.grout_volume = amounts.grout * plan.active_length;
}

void describe_grid(const assembly::Assembly& assembly, Plan& plan) {
  const march::Problem& problem = assembly.problem;
  plan.radial_cells = static_cast<int>(problem.nr());
  plan.axial_cells = static_cast<int>(problem.nz());
  plan.cells = static_cast<long>(problem.nr() * problem.nz() * problem.groups.size());
  plan.outer_radius = problem.grid.r_faces.back();
  plan.grid_depth = problem.grid.z_faces.back();
  plan.step = assembly.multirate.step;
}

void describe_ground(const assembly::Assembly& assembly, Plan& plan) {
  plan.conductivity = assembly::mean_solid(assembly.problem).conductivity;
  plan.undisturbed = assembly.fluid.reference;
}

/// `part` of full flow.
FlowCase flow_case(const assembly::Assembly& assembly, double part, double temperature, const char* what) {
  const model::Scenario& scenario = assembly.scenario;
  const double mass_flow = part * assembly.fluid.flow_per_bore;
  const bore::PipeFlow at = assembly::pipe_flow(scenario, mass_flow, temperature);
  const model::Solid ground = assembly::mean_solid(assembly.problem);
  const auto r =
      assembly::with_measured(assembly::resistances(scenario, ground.conductivity, at.films), assembly.fluid);

  std::vector<double> lengths;
  for (const auto& bore : assembly.bores) lengths.push_back(bore.depth);
  std::nth_element(lengths.begin(), lengths.begin() + static_cast<std::ptrdiff_t>(lengths.size() / 2), lengths.end());
  const double median = lengths[lengths.size() / 2];

  FlowCase flow;
  flow.what = what;
  flow.fluid_temperature = temperature;
  flow.reynolds = at.reynolds;
  flow.regime = materials::regime_name(at.regime);
  flow.bore_resistance = r.resistance[0];
  flow.internal_resistance = bore::loop_type(scenario.bore.loop).internal_resistance(r);
  flow.effective_resistance = assembly::effective_resistance(scenario, assembly.fluid, {ground, median, mass_flow}, r);
  return flow;
}

void describe_flow(const assembly::Assembly& assembly, Plan& plan) {
  plan.response_test = assembly.response_test;
  for (std::size_t g = 0; g < assembly.groups.size(); ++g) {
    const march::Group& group = assembly.problem.groups[g];
    const double weight = assembly.bores[assembly.groups.members[g].front()].flow_weight;
    if (group.returns) plan.mass_flow += assembly.fluid.flow_per_bore * group.members * weight;
  }
  plan.freezing_point = materials::freezing_point(assembly.scenario.fluid);
  plan.flow_cases.push_back(flow_case(assembly, 1, assembly.fluid.reference, "at the ground's"));
  const double least_part = loop::least_part(assembly.scenario.flow);
  if (least_part < 1) {
    plan.flow_cases.push_back(flow_case(assembly, least_part, assembly.fluid.reference, "at least flow, the ground's"));
  }
  for (const auto& limit : assembly.scenario.limits) {
    if (limit.quantity != model::Limit::Quantity::eft) continue;
    const bool least = limit.side == model::Limit::Side::least;
    plan.flow_cases.push_back(flow_case(assembly, 1, limit.value, least ? "at the least EFT," : "at the highest EFT,"));
  }
}

/// Wall time of the whole run from a few days marched twice, writing left out: that is seconds. The first march makes
/// what a run makes once, the factors and the resistances at the films that occur.
double trial_seconds(const assembly::Assembly& assembly, int threads) {
  using Clock = std::chrono::steady_clock;
  simulation::Simulation simulation(assembly, threads);
  const auto start = simulation.save();
  try {
    for (int hour = 0; hour < trial_hours; ++hour) simulation.march_hour();
    simulation.restore(start);
    const auto before = Clock::now();
    for (int hour = 0; hour < trial_hours; ++hour) simulation.march_hour();
    const std::chrono::duration<double> taken = Clock::now() - before;
    return taken.count() * static_cast<double>(assembly.hours()) / trial_hours;
  } catch (const NumericsError&) {
    return std::numeric_limits<double>::quiet_NaN();  // the run would stop as soon
  }
}

}  // namespace

double result_bytes(const assembly::Assembly& assembly) {
  const bool fields = !assembly.scenario.run.screens();
  const double cells =
      fields ? static_cast<double>(assembly.problem.nr() * assembly.problem.nz() * assembly.groups.size()) : 0;
  double shots = 0;
  if (assembly.scenario.fields == model::RecordFields::monthly) shots = 12.0 * assembly.scenario.run.years + 1;
  if (assembly.scenario.fields == model::RecordFields::yearly) shots = 2.0 * assembly.scenario.run.years + 1;
  const double series = assembly.scenario.heat_pump ? 12 : 5;
  return static_cast<double>(assembly.hours()) * 8 * (series + 2) + shots * cells * 4;
}

Plan check(const model::Scenario& scenario, int threads) {
  const assembly::Assembly assembly = forecast::assemble(scenario);
  Plan plan;
  plan.title = scenario.title;
  plan.start = scenario.run.start;
  plan.years = scenario.run.years;
  plan.units = assembly.scenario.units;
  plan.warnings = warnings_before(assembly);
  plan.cautions = cautions(assembly.scenario);
  describe_field(assembly, plan);
  describe_grid(assembly, plan);
  describe_ground(assembly, plan);
  describe_loads(assembly, plan);
  describe_flow(assembly, plan);
  describe_bore_flow(assembly, plan);
  plan.sources = catalogue_values(scenario);
  plan.screens = scenario.run.screens();
  if (!plan.screens) plan.eft_error = forecast::estimate_errors(assembly);
  plan.expected_seconds = plan.screens ? std::numeric_limits<double>::quiet_NaN() : trial_seconds(assembly, threads);
  plan.expected_bytes = result_bytes(assembly);
  return plan;
}

}  // namespace stillground::job
