#include "tools/scenarios/crew_figures.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "engine/bore/hydraulics.hpp"
#include "engine/bore/loop_type.hpp"
#include "engine/materials/fluid.hpp"
#include "engine/materials/rating.hpp"

namespace stillground::scenarios {

namespace {

constexpr double gravity = 9.80665;        ///< standard [m/s2]
constexpr double air_velocity = 0.6096;    ///< 2 ft/s, at which water takes air along [m/s]
constexpr double test_factor = 1.5;        ///< of a test over what it stands for
constexpr double flushing_water = 278.15;  ///< cold, so that the head is rather too much [K]
constexpr double test_water = 283.15;      ///< [K]
constexpr double standing_fluid = 273.15;  ///< of the column's weight, rather too heavy [K]

std::vector<LoopKind> kinds_of(const std::vector<model::BoreSite>& bores, double grout_per_metre) {
  std::map<std::pair<double, double>, long> counts;
  for (const model::BoreSite& bore : bores) ++counts[{bore.top + bore.depth, bore.top}];
  std::vector<LoopKind> kinds;
  for (auto kind = counts.rbegin(); kind != counts.rend(); ++kind) {
    const auto [toe, top] = kind->first;
    kinds.push_back({.count = kind->second, .top = top, .toe = toe, .grout = grout_per_metre * (toe - top)});
  }
  return kinds;
}

std::vector<PipeAmount> pipes_of(const model::Bore& bore, const std::vector<LoopKind>& kinds) {
  const bore::LoopType& type = bore::loop_type(bore.loop);
  const auto own = type.own_pipes(bore.loop);
  const int legs = static_cast<int>(std::lround(type.amounts(bore).pipe)) - static_cast<int>(own.size());
  std::vector<PipeAmount> pipes = {{.what = own.empty() ? "loop" : "outer pipe", .pipe = bore.pipe, .legs = legs}};
  for (const bore::OwnPipe& pipe : own) pipes.push_back({.what = pipe.name, .pipe = pipe.pipe});
  for (PipeAmount& pipe : pipes) {
    for (const LoopKind& kind : kinds) {
      pipe.in_bores += pipe.legs * kind.active() * static_cast<double>(kind.count);
      pipe.to_surface += pipe.legs * kind.toe * static_cast<double>(kind.count);
      pipe.longest_leg = std::max(pipe.longest_leg, kind.toe);
    }
  }
  return pipes;
}

Flushing flushing_of(const model::Bore& bore, double longest) {
  const double flow = bore::flow_for(bore, air_velocity);
  const materials::FluidState water = materials::fluid_state({}, flushing_water);
  return {.velocity = air_velocity, .flow = flow, .head = bore::head(bore, longest, flow, water)};
}

void add_pressures(const assembly::Assembly& assembly, const Allowances& allowances, CrewFigures& figures) {
  const model::Pipe& pipe = assembly.scenario.bore.pipe;
  figures.ratio = materials::dimension_ratio(pipe.outer_diameter, pipe.wall);
  const double weight = materials::fluid_state(assembly.scenario.fluid, standing_fluid).density * gravity;
  figures.column = weight * figures.deepest;
  figures.water_column = materials::fluid_state({}, test_water).density * gravity * figures.deepest;
  figures.test_least = test_factor * allowances.fill;
  for (const materials::PipeStrength& strength : materials::pipe_strengths) {
    const double rating = materials::pressure_rating(strength, figures.ratio);
    figures.pipe_limits.push_back({.material = strength.name,
                                   .source = strength.source,
                                   .rating = rating,
                                   .warmest = strength.full_strength,
                                   .test_most = test_factor * rating - figures.water_column});
  }
}

}  // namespace

CrewFigures crew_figures(const assembly::Assembly& assembly, const Allowances& allowances) {
  const model::Scenario& scenario = assembly.scenario;
  const bore::Amounts amounts = bore::loop_type(scenario.bore.loop).amounts(scenario.bore);
  CrewFigures figures;
  figures.drill_length = assembly::drill_length(assembly);
  figures.kinds = kinds_of(assembly.bores, amounts.grout * (1 + allowances.grout_waste));
  figures.deepest = figures.kinds.front().toe;
  figures.pipes = pipes_of(scenario.bore, figures.kinds);
  double active = 0, longest = 0;
  for (const model::BoreSite& bore : assembly.bores) {
    active += bore.depth;
    longest = std::max(longest, bore.depth);
    figures.trench = std::max(figures.trench, bore.top);
  }
  figures.grout_net = amounts.grout * active;
  figures.grout = figures.grout_net * (1 + allowances.grout_waste);
  figures.fluid_volume = amounts.fluid * active;
  figures.mix = materials::parts_of(scenario.fluid, figures.fluid_volume);
  figures.freezing_point = materials::freezing_point(scenario.fluid);
  figures.flushing = flushing_of(scenario.bore, longest);
  add_pressures(assembly, allowances, figures);
  return figures;
}

}  // namespace stillground::scenarios
