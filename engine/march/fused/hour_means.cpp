#include "engine/march/fused/hour_means.hpp"

#include "engine/base/calendar.hpp"

namespace stillground::march::fused {

namespace {

/// Mean of the groups' topmost stagnant fluid, by bores: going down where circuits begin, coming up where they end.
void add_stagnant(const Problem& problem, const Forcing& forcing, const ExchangeBuffer& exchange, HourMeans& means) {
  double going = 0, coming = 0, outlets = 0, inlets = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const Group& group = problem.groups[g];
    if (!forcing.of(g)) continue;
    if (group.upstream == Group::none) {
      going += group.members * exchange.hour(g).topmost[0];
      inlets += group.members;
    }
    if (group.returns) {
      coming += group.members * exchange.hour(g).topmost[1];
      outlets += group.members;
    }
  }
  means.lft = going / inlets;
  means.eft = coming / outlets;
}

}  // namespace

void add_stage(const loop::OperatingPoint& point, double share, double heat_rate, HourMeans& sums) {
  // Q = W (LFT - EFT)
  sums.eft += share * point.eft;
  sums.lft += share * point.lft;
  sums.power += share * point.power;
  sums.to_ground += share * heat_rate * (point.lft - point.eft);
}

HourMeans hour_means(const Problem& problem, const Forcing& forcing, double heat_rate, const ExchangeBuffer& exchange,
                     const HourMeans& sums) {
  HourMeans means = sums;
  if (heat_rate <= 0) add_stagnant(problem, forcing, exchange, means);
  const auto drilled = [&](std::size_t g) { return forcing.of(g) != nullptr; };
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    if (drilled(g)) means.surface += problem.groups[g].members * exchange.hour(g).surface / seconds_per_hour;
  }
  means.fluid = mean_fluid(problem.groups.size(), drilled, [&](std::size_t g) { return exchange.hour(g).fluid; });
  return means;
}

}  // namespace stillground::march::fused
