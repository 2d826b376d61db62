#include "validation/harness/segmented_run.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "engine/simulation/simulation.hpp"
#include "validation/reference_solutions/segmented_field.hpp"

namespace stillground::validation {

namespace {

constexpr double undisturbed = 285.15;  // [K]

using reference_solutions::SegmentedLoop;

SegmentedLoop loop_of(const assembly::Assembly& assembly, double flow, double temperature) {
  if (flow <= 0) return {};
  const model::Scenario& s = assembly.scenario;
  const auto films = assembly::pipe_flow(s, flow, temperature).films;
  const auto modes = assembly::resistances(s, s.ground.layers.front().solid.conductivity, films);
  return {flow * assembly.fluid.heat_capacity, modes.resistance[0],
          bore::loop_type(s.bore.loop).internal_resistance(modes)};
}

reference_solutions::SegmentedField field_of(const model::Scenario& s, double longest) {
  const model::Solid& solid = s.ground.layers.front().solid;
  std::vector<reference_solutions::SegmentedBore> bores;
  for (const model::BoreSite& site : std::get<model::Positions>(s.layout).sites) {
    bores.push_back({site.x, site.y, site.top, site.depth});
  }
  return {{solid.conductivity, solid.heat_capacity, s.bore.diameter / 2}, bores, longest};
}

/// What passes from a bore's fluid to its wall: the streams' mean less the wall over R_b, along the bore [W].
double heat_of(const assembly::Assembly& assembly, const record::Snapshot& shot, std::size_t bore, double resistance) {
  const std::size_t group = assembly.groups.of_bore[bore], nz = assembly.problem.nz();
  const march::Group& own = assembly.problem.groups[group];
  double sum = 0;
  for (std::size_t k = own.first; k < own.end; ++k) {
    const std::size_t at = group * nz + k;
    const double fluid = (shot.fluid_down[at] + shot.fluid_up[at]) / 2;
    sum += assembly.problem.grid.height(k) * own.fraction[k] * (fluid - shot.wall_temperature[at]) / resistance;
  }
  return sum;
}

}  // namespace

std::vector<MonthEnd> by_months(model::Scenario scenario, const std::vector<double>& heat, const FlowParts& parts,
                                const model::Scenario& resistances_of) {
  model::GroundLoads loads;
  for (const double of_month : heat) loads.to_ground.values.insert(loads.to_ground.values.end(), month_hours, of_month);
  scenario.loads = loads;
  const assembly::Assembly assembly = assembly::assemble(scenario);
  model::Scenario other = resistances_of;
  other.loads = loads;
  const assembly::Assembly computed = assembly::assemble(other);
  simulation::Simulation simulation(assembly, 1);
  auto field = field_of(scenario, static_cast<double>(heat.size() + 1) * month_hours * seconds_per_hour);
  std::vector<MonthEnd> ends;
  for (std::size_t month = 0; month < heat.size(); ++month) {
    record::Hour last;
    for (int hour = 0; hour < month_hours; ++hour) last = simulation.march_hour();
    MonthEnd end{.lft = last.lft - undisturbed, .eft = last.eft - undisturbed, .flow = last.flow};
    std::vector<SegmentedLoop> loops;
    for (const double part : parts(month)) {
      const double flow = part * computed.fluid.flow_per_bore;
      loops.push_back(loop_of(computed, flow, (last.lft + last.eft) / 2));
      end.flow_reference += flow;
    }
    const auto state = field.hold(heat[month], loops, month_hours * seconds_per_hour);
    end.lft_reference = state.inlet;
    end.eft_reference = state.outlet;
    end.heat_reference = state.heat;
    const record::Snapshot shot = simulation.snapshot();
    for (std::size_t b = 0; b < loops.size(); ++b) {
      end.heat.push_back(loops[b].heat_rate > 0 ? heat_of(assembly, shot, b, loops[b].local) : 0);
    }
    ends.push_back(end);
  }
  return ends;
}

model::Scenario six_bores(int years) {
  model::Scenario s;
  s.title = "six bores";
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "ground", {2.2, 2.2e6}}};
  s.ground.undisturbed = model::MeanOverBore{undisturbed};
  s.bore.top = 2;
  s.bore.depth = 100;
  s.bore.diameter = 0.14;
  s.bore.loop = model::SingleU{0.075};
  s.bore.pipe = {"", 0.040, 0.0037, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 2.4e6}};
  model::Positions positions;
  for (int i = 0; i < 6; ++i) positions.sites.push_back({6.0 * (i % 3), 6.0 * (i / 3), 2, 100});
  s.layout = positions;
  s.flow = {0.45e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.run.start = {2027, 1, 1};
  s.run.years = years;
  s.file = "six_bores.yaml";
  return s;
}

std::vector<double> months_of_years(int years) {
  std::vector<double> months;
  for (int month = 0; month < 12 * years; ++month) {
    months.push_back(-8 - 18 * std::cos(2 * std::numbers::pi * month / 12));
  }
  return months;
}

}  // namespace stillground::validation
