#include "engine/field/merged_groups.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include "engine/field/coupling.hpp"
#include "engine/field/layout.hpp"
#include "engine/field/superposition.hpp"
#include "tests/catch.hpp"

using namespace stillground;

namespace {

/// Repeatable numbers in [0, 1): the generator's own sequence is fixed by the standard.
class Noise {
 public:
  double operator()() { return static_cast<double>(random_()) / 4294967296.0; }

 private:
  std::mt19937 random_;
};

/// Bores at random, `count` of them, no two nearer than some metres. Invented.
std::vector<model::BoreSite> scattered(std::size_t count) {
  Noise noise;
  std::vector<model::BoreSite> bores;
  for (std::size_t i = 0; i < count; ++i) {
    const double row = static_cast<double>(i / 10), column = static_cast<double>(i % 10);
    bores.push_back({7 * column + 3 * noise(), 7 * row + 3 * noise(), 1, 100, 0});
  }
  return bores;
}

/// Forecasts at three instants, at random within 1 K.
field::Forecast random_forecast(std::size_t groups) {
  Noise noise;
  field::Forecast forecast;
  for (std::size_t g = 0; g < groups; ++g) forecast.push_back({noise(), noise(), noise()});
  return forecast;
}

/// Largest difference of a bore's forecast from the mean over its group.
double largest_deviation(const field::Groups& groups, const field::Forecast& forecast) {
  double largest = 0;
  for (const auto& members : groups.members) {
    for (std::size_t i = 0; i < forecast.front().size(); ++i) {
      double mean = 0;
      for (const std::size_t bore : members) mean += forecast[bore][i] / static_cast<double>(members.size());
      for (const std::size_t bore : members) largest = std::max(largest, std::abs(forecast[bore][i] - mean));
    }
  }
  return largest;
}

}  // namespace

TEST_CASE("No bore of a merged group is foreseen farther from the group's mean than the bound", "[field]") {
  for (const std::size_t count : {40U, 2300U}) {  // the second is parted before it is joined
    const auto bores = scattered(count);
    const auto forecast = random_forecast(count);
    std::size_t before = count;
    for (const double bound : {0.1, 0.2, 0.4}) {
      const auto groups = field::merged_groups(bores, field::lone_groups(count), forecast, bound);
      CHECK(largest_deviation(groups, forecast) <= bound);
      CHECK(groups.size() < before);  // the wider, the fewer
      before = groups.size();
    }
  }
}

TEST_CASE("Bores of one forecast share a group under the least bound, others never", "[field]") {
  const auto bores = scattered(30);
  field::Forecast forecast;
  for (std::size_t i = 0; i < bores.size(); ++i) forecast.push_back({static_cast<double>(i % 4)});
  const auto groups = field::merged_groups(bores, field::lone_groups(bores.size()), forecast, 1e-6);
  CHECK(groups.size() == 4);
  for (std::size_t i = 0; i < bores.size(); ++i) CHECK(groups.of_bore[i] == i % 4);
}

TEST_CASE("Bores of unlike make are not merged", "[field]") {
  auto bores = scattered(6);
  bores[1].depth = 101;
  bores[2].start = 1e7;
  bores[3].flow_weight = 2;
  const field::Forecast forecast(bores.size(), {0.0});
  const auto groups = field::merged_groups(bores, field::lone_groups(bores.size()), forecast, 1);
  CHECK(groups.size() == 4);
  CHECK(groups.of_bore[0] == groups.of_bore[5]);
}

// Forecasts 0, 1, 2 ... along a line within a bound of 1 of their mean: three to a group are the most.
TEST_CASE("Along a line groups are few", "[field]") {
  const auto bores = scattered(90);
  field::Forecast forecast;
  for (std::size_t i = 0; i < bores.size(); ++i) forecast.push_back({static_cast<double>(i)});
  const auto groups = field::merged_groups(bores, field::lone_groups(bores.size()), forecast, 1);
  CHECK(groups.size() >= 30);
  CHECK(groups.size() <= 45);  // two to a group, were every third left over
}

TEST_CASE("A merged group is given the mean of what its bores see, its own group's other bores among them", "[field]") {
  std::vector<double> r(36);
  for (std::size_t i = 0; i < r.size(); ++i) r[i] = 0.08 * std::pow(1.26, static_cast<double>(i));
  const auto bores = scattered(12);
  std::vector<std::size_t> thirds;
  for (std::size_t i = 0; i < bores.size(); ++i) thirds.push_back(i % 3);
  const auto groups = field::numbered(thirds);
  const field::Coupling coupling(bores, groups, r);
  // Some rise of each group, and by hand the sum of the others at each bore.
  const auto rise = [](std::size_t group, double at) { return static_cast<double>(1 + group) / (1 + at * at); };
  for (std::size_t a = 0; a < groups.size(); ++a) {
    double given = 0, mean = 0;
    for (const auto& term : coupling.terms(a)) given += term.weight * rise(term.source, r[term.cell]);
    for (const std::size_t bore : groups.members[a]) {
      for (std::size_t other = 0; other < bores.size(); ++other) {
        if (other == bore) continue;
        for (const auto& w : field::radial_weights(r, field::distance(bores[bore], bores[other]))) {
          mean += w.weight * rise(other % 3, r[w.cell]) / static_cast<double>(groups.members[a].size());
        }
      }
    }
    CHECK(given == Approx(mean).epsilon(1e-12));
  }
}

TEST_CASE("Shells hold every term once, the nearest at every refresh, each farther one half as often", "[field]") {
  std::vector<double> r(36);
  for (std::size_t i = 0; i < r.size(); ++i) r[i] = 0.08 * std::pow(1.26, static_cast<double>(i));
  const auto bores = scattered(100);
  const auto groups = field::lone_groups(bores.size());
  const field::Coupling coupling(bores, groups, r);
  REQUIRE(coupling.shells().size() > 2);
  long every = 1;
  for (const auto& shell : coupling.shells()) {
    CHECK(shell.every == every);
    every *= 2;
  }
  for (std::size_t a = 0; a < groups.size(); ++a) {
    std::size_t held = 0;
    for (const auto& shell : coupling.shells()) held += coupling.terms(a, shell).size();
    CHECK(held == coupling.terms(a).size());
  }
}
