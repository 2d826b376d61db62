#include "engine/forecast/merging.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/field/distance_nodes.hpp"
#include "engine/field/layout.hpp"
#include "engine/forecast/error_responses.hpp"
#include "engine/response/heat_history.hpp"
#include "engine/response/single_bore.hpp"
#include "engine/response/step_response.hpp"
#include "engine/response/superposition.hpp"

namespace stillground::forecast {

namespace {

constexpr int times_a_year = 5;  // whole days: the slow clock of the rings far out goes by days
constexpr double between_knots = 1.15;

using Values = std::vector<double>;

/// Hours at which the answer to a watt is read: 0 (nothing yet), then from the first to the run's last.
std::vector<long> knots_to(long last) {
  std::vector<long> hours{0};
  for (double hour = 1; hour < static_cast<double>(last); hour = std::max(hour + 1, hour * between_knots)) {
    hours.push_back(std::lround(hour));
  }
  hours.push_back(last);
  return hours;
}

/// Bores that work in the same years, whose heat is one series.
struct ActivePeriods {
  std::vector<std::pair<double, double>> from_to;  ///< since the run's start [s]
  std::vector<std::size_t> of_bore;

  explicit ActivePeriods(const std::vector<model::BoreSite>& bores) {
    for (const auto& bore : bores) {
      const std::pair at{bore.start, bore.stop};
      const auto found = std::find(from_to.begin(), from_to.end(), at);
      of_bore.push_back(static_cast<std::size_t>(found - from_to.begin()));
      if (found == from_to.end()) from_to.push_back(at);
    }
  }

  bool works(std::size_t phase, long hour) const {
    const double time = static_cast<double>(hour) * seconds_per_hour;
    return time >= from_to[phase].first && time < from_to[phase].second;
  }
};

/// Sums of the heat of a bore of each phase before each hour [W h]: of the field's heat, predicted as if all bores
/// worked all the time, those that work take an equal part.
std::vector<Values> heat_of_phases(const ActivePeriods& periods, const response::HeatHistory& history) {
  const std::size_t count = periods.from_to.size();
  std::vector<double> bores(count, 0.0);
  for (const std::size_t phase : periods.of_bore) ++bores[phase];
  std::vector<Values> before(count, Values{0});
  for (std::size_t hour = 0; hour + 1 < history.before.size(); ++hour) {
    double working = 0;
    for (std::size_t p = 0; p < count; ++p) working += periods.works(p, static_cast<long>(hour)) ? bores[p] : 0.0;
    const double field =
        (history.before[hour + 1] - history.before[hour]) * static_cast<double>(periods.of_bore.size());
    for (std::size_t p = 0; p < count; ++p) {
      const double own = periods.works(p, static_cast<long>(hour)) ? field / working : 0.0;
      before[p].push_back(before[p].back() + own);
    }
  }
  return before;
}

/// Each group's first bore's neighbours, longer ones for more, shared out between the nodes: [group][phase][node].
std::vector<std::vector<Values>> neighbours_by_distance(const assembly::Assembly& assembly,
                                                        const ActivePeriods& periods,
                                                        const field::DistanceNodes& nodes) {
  const auto& bores = assembly.bores;
  double mean_depth = 0;
  for (const auto& bore : bores) mean_depth += bore.depth / static_cast<double>(bores.size());
  std::vector<std::vector<Values>> counts;
  for (const auto& members : assembly.groups.members) {
    auto& count = counts.emplace_back(periods.from_to.size(), Values(nodes.nodes().size(), 0.0));
    const std::size_t here = members.front();
    for (std::size_t other = 0; other < bores.size(); ++other) {
      if (other == here) continue;
      nodes.share(field::distance(bores[here], bores[other]), bores[other].depth / mean_depth,
                  count[periods.of_bore[other]]);
    }
  }
  return counts;
}

double product(const Values& a, const Values& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

}  // namespace

std::vector<long> merging_hours(int years) {
  std::vector<int> listed;
  for (int year = 1, next = 2; year < years; next += std::exchange(year, next)) listed.push_back(year);
  listed.push_back(years);
  std::vector<long> hours;
  for (const int year : listed) {
    for (int part = 1; part <= times_a_year; ++part) {
      hours.push_back((year - 1) * hours_per_year + part * hours_per_year / times_a_year);
    }
  }
  return hours;
}

field::Forecast predict_neighbours(const assembly::Assembly& assembly) {
  const field::DistanceNodes nodes(assembly.bores);
  const std::vector<long> knots = knots_to(assembly.hours());
  std::vector<double> times;
  for (std::size_t i = 1; i < knots.size(); ++i) times.push_back(static_cast<double>(knots[i]) * seconds_per_hour);
  const model::Scenario bore = response::plain_lone_bore(assembly, {1, 0.25, 1});
  const response::LongTimeRise rise =
      response::long_time_rise(assembly::assemble(bore, assembly), times, nodes.nodes());

  const Neighbourhood around = neighbourhood(assembly.bores);
  Values eft{0};
  for (std::size_t i = 0; i < times.size(); ++i)
    eft.push_back(rise.fluid[i] + product(around.count, rise.at_distance[i]));
  const ActivePeriods periods(assembly.bores);
  const auto heat = heat_of_phases(periods, response::predict_heat(assembly, response::StepResponse(knots, eft)));

  const auto counts = neighbours_by_distance(assembly, periods, nodes);
  const std::vector<long> instants = merging_hours(assembly.scenario.run.years);
  field::Forecast forecast(counts.size(), Values(instants.size(), 0.0));
  for (std::size_t j = 0; j < nodes.nodes().size(); ++j) {
    Values answer{0};
    for (const Values& at : rise.at_distance) answer.push_back(at[j]);
    const response::StepResponse by_one_watt(knots, answer);
    for (std::size_t p = 0; p < heat.size(); ++p) {
      for (std::size_t i = 0; i < instants.size(); ++i) {
        const double by_one = response::superposed(by_one_watt, heat[p], instants[i] - 1);
        for (std::size_t g = 0; g < counts.size(); ++g) forecast[g][i] += counts[g][p][j] * by_one;
      }
    }
  }
  return forecast;
}

assembly::Assembly assemble(model::Scenario scenario, const march::fused::Kernels& kernels) {
  // A tenth of the bound is left to what the prediction misses: heat shared out unequally, films, layers.
  constexpr double predicted_part = 0.9;
  assembly::Assembly plain = assembly::uncoupled(std::move(scenario), kernels);
  if (!plain.merges() || plain.groups.size() < 2) return assembly::coupled(std::move(plain));
  field::Groups merged = field::merged_groups(plain.bores, plain.groups, predict_neighbours(plain),
                                              predicted_part * plain.scenario.run.group_error);
  return assembly::coupled(assembly::regrouped(std::move(plain), std::move(merged)));
}

}  // namespace stillground::forecast
