#include "tools/results/fluid.hpp"

#include <cmath>
#include <numbers>

#include "engine/base/errors.hpp"
#include "tests/catch.hpp"
#include "tests/unit/results/made_hours.hpp"
#include "tools/results/eft.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::Contains;
using stillground::testing::made_hours;

namespace {

/// Mean of sin(2 pi h / period) over the hours from..to-1: the sum of equally spaced sines is a quotient of two sines
/// (Gradshteyn & Ryzhik, 1.341.1 [number from memory; follows from the geometric sum]).
double mean_of_sine(double from, double to, double period) {
  const double half = std::numbers::pi / period;
  return std::sin(half * (to - from)) * std::sin(half * (from + to - 1)) / std::sin(half) / (to - from);
}

record::Header one_year_from(const Date& start) {
  record::Header header;
  header.start = start;
  header.years = 1;
  return header;
}

}  // namespace

TEST_CASE("A daily swing leaves every month its mean, and its own extremes") {
  const auto hours = made_hours(
      8760, [](std::size_t h) { return 10 + 3 * std::sin(2 * std::numbers::pi * static_cast<double>(h) / 24); });
  const FluidSummary summary = summarise(one_year_from({2027, 7, 1}), hours);
  REQUIRE(summary.months.size() == 12);
  for (const MonthFluid& month : summary.months) {
    CHECK(month.eft.mean == Approx(283.15).epsilon(1e-12));  // whole days: the sines cancel to round-off
    CHECK(month.eft.least == Approx(280.15).epsilon(1e-12));
    CHECK(month.eft.most == Approx(286.15).epsilon(1e-12));
    CHECK(month.mean_fluid.mean == Approx(284.15).epsilon(1e-12));
  }
}

TEST_CASE("Monthly means of a yearly swing are those of its closed sum") {
  const auto hours = made_hours(
      8760, [](std::size_t h) { return 10 + 8 * std::sin(2 * std::numbers::pi * static_cast<double>(h) / 8760); });
  const FluidSummary summary = summarise(one_year_from({2027, 1, 1}), hours);
  REQUIRE(summary.months.size() == 12);
  for (const MonthFluid& month : summary.months) {
    const double exact =
        10 + 8 * mean_of_sine(static_cast<double>(month.span.first), static_cast<double>(month.span.last), 8760);
    CHECK(month.eft.mean - 273.15 == Approx(exact).margin(1e-10));  // 744 sums near 280 K
  }
}

TEST_CASE("Hours without flow count nowhere") {
  auto hours = made_hours(100, [](std::size_t) { return 5.0; });
  for (std::size_t h = 0; h < 40; ++h) {
    hours[h].eft = 273.15 - 40;
    hours[h].flow = 0;
  }
  const Spread spread = spread_of(hours, Quantity::eft);
  CHECK(spread.hours == 60);
  CHECK(spread.least == Approx(278.15));
  CHECK(spread.mean == Approx(278.15));
  const std::vector<double> shares = {0.0};
  CHECK(duration_curve(hours, Quantity::eft, shares).front() == Approx(278.15));
}

TEST_CASE("Without any flow there is no temperature to tell") {
  auto hours = made_hours(8760, [](std::size_t) { return 5.0; });
  for (auto& hour : hours) hour.flow = 0;
  const FluidSummary summary = summarise(one_year_from({2027, 7, 1}), hours);
  CHECK(summary.years[0].eft.hours == 0);
  CHECK(std::isnan(summary.years[0].eft.mean));
  CHECK(std::isnan(summary.months[3].lft.least));
  CHECK(std::isnan(summary.duration.eft[0][50]));
}

TEST_CASE("The duration curve of evenly rising values is a straight line") {
  const auto hours = made_hours(101, [](std::size_t h) { return static_cast<double>((h * 37) % 101) / 10; });
  const std::vector<double> shares = {0, 0.25, 0.505, 1};
  const std::vector<double> curve = duration_curve(hours, Quantity::eft, shares);
  for (std::size_t i = 0; i < shares.size(); ++i) CHECK(curve[i] - 273.15 == Approx(10 * shares[i]).margin(1e-10));
}

TEST_CASE("A limit on something unknown is refused by name") {
  CHECK_THROWS_AS(quantity_of("wall"), InputError);
  CHECK_THROWS_WITH(quantity_of("wall"), Contains("\"wall\""));
}
