
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

constexpr long first_change = 1500;  // [h] when a phase begins, or a load first needs more flow
constexpr long after = 600;          // [h]

/// Five bores of a row, the last two of which begin later.
model::Scenario phased(double start) {
  auto s = test::scenario(1, 1);
  std::vector<model::BoreSite> sites;
  for (int i = 0; i < 5; ++i) sites.push_back({6.0 * i, 0, s.bore.top, s.bore.depth, i < 3 ? 0 : start});
  s.layout = model::Positions{sites};
  s.loads = test::building(12000);
  return s;
}

/// How many hours from the first on are the same to the last bit.
long equal_hours(const std::vector<record::Hour>& a, const std::vector<record::Hour>& b) {
  long n = 0;
  for (; n < static_cast<long>(std::min(a.size(), b.size())); ++n) {
    const auto &x = a[static_cast<std::size_t>(n)], &y = b[static_cast<std::size_t>(n)];
    if (x.eft != y.eft || x.lft != y.lft || x.flow != y.flow || x.heat_to_ground != y.heat_to_ground) break;
  }
  return n;
}

}  // namespace

TEST_CASE("A phase that begins later changes no bit before its hour, whenever that is") {
  const auto sooner = test::march(phased(first_change * 3600.0), first_change + after);
  const auto later = test::march(phased((first_change + after) * 3600.0), first_change + after);
  CHECK(equal_hours(sooner, later) == first_change);
}

TEST_CASE("Bores of a later phase change no bit before their hour against a field without them") {
  auto without = phased(0);
  std::get<model::Positions>(without.layout).sites.resize(3);
  auto with = phased(first_change * 3600.0);
  without.run.groups = with.run.groups = model::Run::Groups::none;  // so that both sum in one order
  // The flow's temperature is a mean over all bores, begun or not, which may round otherwise: not so of these.
  for (auto* s : {&without, &with}) {
    s->ground.layers = {s->ground.layers.back()};
    for (auto& site : std::get<model::Positions>(s->layout).sites) site.depth = 95;
  }
  const auto a = test::march(without, first_change + after), b = test::march(with, first_change + after);
  CHECK(equal_hours(a, b) == first_change);
}

TEST_CASE("Shutting bores off changes no bit before its hour") {
  auto through = phased(0), stopped = phased(0);
  auto& sites = std::get<model::Positions>(stopped.layout).sites;
  sites.back().stop = first_change * 3600.0;
  through.run.groups = stopped.run.groups = model::Run::Groups::none;
  const auto a = test::march(through, first_change + after), b = test::march(stopped, first_change + after);
  CHECK(equal_hours(a, b) == first_change);
}

TEST_CASE("A second flow level changes no bit before the first hour that needs it") {
  // Half the peak until the change: one stage of two. Against a pump that is half as large and knows no stages.
  auto staged = test::scenario(1, 2);
  model::GroundLoads loads;
  test::Noise noise;
  for (long hour = 0; hour < hours_per_year; ++hour) {
    loads.to_ground.values.push_back(hour < first_change ? 2000 * noise() : hour == first_change ? 4000.0 : -3000.0);
  }
  loads.to_ground.first_hour = hour_of_year(staged.run.start);
  staged.loads = loads;
  staged.heat_pump.reset();
  auto half = staged;
  half.flow.rate /= 2;
  staged.flow.varies = model::Flow::Varies::in_stages;
  staged.flow.stages = 2;
  const auto a = test::march(staged, first_change + after), b = test::march(half, first_change + after);
  CHECK(equal_hours(a, b) == first_change);
}

TEST_CASE("A phase that begins at the start is no phase") {
  auto all = test::scenario(1, 5);
  all.loads = test::building(12000);
  CHECK(equal_hours(test::march(all, 500), test::march(phased(0), 500)) == 500);
}

TEST_CASE("A resumed run knows which bores have begun and which are shut off") {
  auto s = phased(200 * 3600.0);
  std::get<model::Positions>(s.layout).sites.front().stop = 300 * 3600.0;
  const assembly::Assembly assembly = assembly::assemble(s);
  for (const int cut : {150, 200, 250, 300, 350}) {
    simulation::Simulation through(assembly, 1), second(assembly, 1);
    for (int hour = 0; hour < cut; ++hour) through.march_hour();
    second.restore(through.save());
    for (int hour = cut; hour < 400; ++hour) REQUIRE(through.march_hour().eft == second.march_hour().eft);
  }
}
