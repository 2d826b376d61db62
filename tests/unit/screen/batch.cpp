#include "engine/screen/batch.hpp"

#include <cmath>

#include "engine/screen/assemble.hpp"
#include "engine/screen/own_error.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

using Hours = std::vector<record::Hour>;

model::Scenario middle() {
  auto s = test::scenario(2, 3, 3);
  s.bore.depth = 60;
  s.loads = test::building(2500.0 * 6);
  return s;
}

model::Scenario in_other_ground(model::Scenario s, double conductivity, double heat_capacity) {
  for (model::Layer& layer : s.ground.layers) {
    layer.solid.conductivity *= conductivity;
    layer.solid.heat_capacity *= heat_capacity;
  }
  return s;
}

Hours hours_of(const screen::Batch& batch, const model::Scenario& variant) {
  Hours hours;
  batch.screen(variant,
               [&](std::span<const record::Hour> year) { hours.insert(hours.end(), year.begin(), year.end()); });
  return hours;
}

Hours by_itself(const model::Scenario& s) {
  Hours hours;
  screen::estimate(screen::assemble(s),
                   [&](std::span<const record::Hour> year) { hours.insert(hours.end(), year.begin(), year.end()); });
  return hours;
}

}  // namespace

TEST_CASE("A response marched once serves other ground, loads, flow and undisturbed temperature within 0.02 K") {
  const screen::Batch batch(middle());
  auto other = in_other_ground(middle(), 1.2, 0.9);
  other.loads = test::building(2000.0 * 6);
  other.flow.rate *= 0.8;
  std::get<model::SeasonalSurface>(other.ground.undisturbed).mean += 1;
  for (const model::Scenario& variant : {middle(), in_other_ground(middle(), 0.8, 1.1), other}) {
    const double most = test::largest_difference(hours_of(batch, variant), by_itself(variant));
    CHECK(most > 0);
    CHECK(most < 0.02);
  }
}

TEST_CASE("A batch serves bores of other grout and pipe, and knows how far off they may be as well as they do alone") {
  const screen::Batch batch(middle());
  for (const double conductivity : {0.8, 2.4}) {
    auto variant = middle();
    variant.bore.grout.solid.conductivity = conductivity;
    Hours hours;
    const screen::Estimate estimate = batch.screen(
        variant, [&](std::span<const record::Hour> year) { hours.insert(hours.end(), year.begin(), year.end()); });
    CHECK(test::largest_difference(hours, by_itself(variant)) < 0.02);
    const assembly::Assembly alone = screen::assemble(variant);
    const record::ScreeningError here = batch.own_error(batch.assembled(variant), estimate),
                                 own = screen::own_error(alone, screen::estimate(alone, [](auto) {}));
    // Their circuits answer alike; the exponentials of a longer march are others.
    CHECK(here.month == Approx(own.month).epsilon(0.1));
    CHECK(here.hour == Approx(own.hour).epsilon(0.1));
  }
}

TEST_CASE("A batch gives the same at any number of threads") {
  const screen::Batch batch(middle());
  std::vector<model::Scenario> variants;
  for (const double factor : {0.8, 0.9, 1.0, 1.1}) variants.push_back(in_other_ground(middle(), factor, 1));
  const auto least = [&](int threads) {
    std::vector<double> found(variants.size(), 1000);
    batch.screen(
        variants,
        [&](std::size_t i, std::span<const record::Hour> year) {
          for (const record::Hour& hour : year) found[i] = std::min(found[i], hour.eft);
        },
        threads);
    return found;
  };
  const auto one = least(1);
  CHECK(one == least(3));
  CHECK(one[0] < one[3]);
}

TEST_CASE("A batch refuses what its response does not know, at the key") {
  const screen::Batch batch(middle(), 1.5);
  const auto refused = [&](const model::Scenario& variant, const char* key) {
    CHECK_THROWS_WITH(hours_of(batch, variant), Contains(key) && Contains("one geometry"));
  };
  auto variant = middle();
  variant.layout = model::Grid{2, 3, 7};
  refused(variant, "field");
  variant = middle();
  variant.bore.depth = 70;
  refused(variant, "field");
  variant = middle();
  variant.ground.layers[0].solid.conductivity *= 1.1;
  refused(variant, "ground.layers");
  refused(in_other_ground(middle(), 2, 1), "ground.layers");
  variant = middle();
  variant.run.years = 4;
  refused(variant, "run.years");
}
