#include "engine/assembly/bore_groups.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/base/errors.hpp"
#include "engine/field/layout.hpp"

namespace stillground::assembly {

namespace {

constexpr std::size_t most_bores = 10000;

}  // namespace

std::vector<model::BoreSite> bores_of(const model::Scenario& scenario) {
  auto bores = field::sites(scenario.layout, scenario.bore.top, scenario.bore.depth);
  if (bores.empty()) {
    throw InputError(scenario.place("field.plot"), "field.plot",
                     "no bore fits on the plot with these setbacks; is the outline in metres, its corners in order?");
  }
  if (bores.size() > most_bores) {
    throw InputError(
        scenario.place("field.plot"), "field.plot",
        fmt::format("the plot holds {} bores (allowed: up to {}); give a wider spacing", bores.size(), most_bores));
  }
  return bores;
}

ground::DepthInterval reach_of(const model::BoreSite& bore) {
  return {bore.top, bore.top + bore.depth};
}

std::vector<march::Group> march_groups(const ground::Grid& grid, const std::vector<model::BoreSite>& bores,
                                       const field::Groups& groups, const field::Upstream& upstream) {
  std::vector<march::Group> result;
  for (const auto& members : groups.members) {
    const std::size_t bore = members.front();
    march::Group group;
    group.fraction = ground::active_fraction(grid, reach_of(bores[bore]));
    group.members = static_cast<double>(members.size());
    const auto active = [](double fraction) { return fraction > 1e-9; };
    const auto first = std::find_if(group.fraction.begin(), group.fraction.end(), active);
    const auto last = std::find_if(group.fraction.rbegin(), group.fraction.rend(), active).base();
    group.first = static_cast<std::size_t>(first - group.fraction.begin());
    group.end = static_cast<std::size_t>(last - group.fraction.begin());
    if (upstream[bore] != field::no_bore) group.upstream = groups.of_bore[upstream[bore]];
    group.returns = std::find(upstream.begin(), upstream.end(), bore) == upstream.end();
    result.push_back(std::move(group));
  }
  return result;
}

void check_circuits(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores,
                    const field::Upstream& upstream) {
  if (bores.size() % static_cast<std::size_t>(scenario.flow.in_series) != 0) {
    throw InputError(scenario.place("flow.in_series"), "flow.in_series",
                     fmt::format("{} bores do not make circuits of {}: one would be shorter than the others",
                                 bores.size(), scenario.flow.in_series));
  }
  for (std::size_t i = 0; i < bores.size(); ++i) {
    if (upstream[i] == field::no_bore) continue;
    const model::BoreSite &bore = bores[i], &before = bores[upstream[i]];
    if (bore.start == before.start && bore.stop == before.stop && bore.flow_weight == before.flow_weight) continue;
    throw InputError(
        scenario.place("flow.in_series"), "flow.in_series",
        fmt::format("bores {} and {} are on one circuit but differ in start, stop or flow", upstream[i] + 1, i + 1));
  }
}

void check_merging(const model::Scenario& scenario) {
  if (scenario.run.groups == model::Run::Groups::merged && scenario.flow.in_series > 1) {
    throw InputError(scenario.place("run.groups"), "run.groups",
                     "merged: bores in series cannot be merged (allowed here: symmetry, none)");
  }
}

double circuit_weights(const std::vector<model::BoreSite>& bores, const field::Upstream& upstream) {
  double sum = 0;
  for (std::size_t i = 0; i < bores.size(); ++i) sum += upstream[i] == field::no_bore ? bores[i].flow_weight : 0.0;
  return sum;
}

}  // namespace stillground::assembly
