#include "tools/present/axis.hpp"

#include <catch2/catch.hpp>
#include <limits>

using namespace stillground::present;

namespace {

Range range_of(double low, double high) {
  Range range;
  range.add(low);
  range.add(high);
  return range;
}

std::vector<std::string> labels(const Axis& axis) {
  std::vector<std::string> words;
  for (const Tick& tick : axis.ticks) words.push_back(tick.label);
  return words;
}

}  // namespace

TEST_CASE("An axis holds its data between two round numbers") {
  const Axis axis = round_axis("EFT", range_of(-1.7, 23.4), 6);
  CHECK(axis.from == -5);
  CHECK(axis.to == 25);
  CHECK(labels(axis) == std::vector<std::string>{"-5", "0", "5", "10", "15", "20", "25"});
}

TEST_CASE("Steps below one get the decimals that they need") {
  CHECK(labels(round_axis("T", range_of(11.82, 12.18), 4)) ==
        std::vector<std::string>{"11.8", "11.9", "12.0", "12.1", "12.2"});
}

TEST_CASE("Data that end on a tick do not ask for another") {
  const Axis axis = round_axis("T", range_of(0, 30), 6);
  CHECK(axis.from == 0);
  CHECK(axis.to == 30);
}

TEST_CASE("One value, or none, still gives an axis with a width") {
  for (const Axis& axis : {round_axis("T", range_of(7, 7), 6), round_axis("T", Range(), 6)}) {
    CHECK(axis.to > axis.from);
    CHECK(axis.ticks.size() >= 2);
  }
}

TEST_CASE("A range knows negative values and passes over gaps") {
  Range range = range_of(-3, std::numeric_limits<double>::quiet_NaN());
  CHECK(range.low() == -3);
  CHECK(range.high() == -3);
  CHECK(Range().empty());
}

TEST_CASE("Run-years are named by the first, the last and round ones between") {
  CHECK(labels(run_year_axis(1)) == std::vector<std::string>{"1"});
  CHECK(labels(run_year_axis(3)) == std::vector<std::string>{"1", "2", "3"});
  CHECK(labels(run_year_axis(25)) == std::vector<std::string>{"1", "5", "10", "15", "20", "25"});
  CHECK(labels(run_year_axis(27)) == std::vector<std::string>{"1", "5", "10", "15", "20", "27"});
}

TEST_CASE("A logarithmic axis runs over whole powers of ten and names them as numbers") {
  const Axis axis = decade_axis("time [h]", range_of(-1.5, 2.2));
  CHECK(axis.from == -2);
  CHECK(axis.to == 3);
  CHECK(labels(axis) == std::vector<std::string>{"0.01", "0.1", "1", "10", "100", "1000"});
  CHECK(decade_axis("", range_of(0.3, 0.3)).to == 1);
}
