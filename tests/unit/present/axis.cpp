#include "tools/present/axis.hpp"

#include <limits>

#include "tests/catch.hpp"
#include "tools/present/labels.hpp"

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

TEST_CASE("The calendar years stand below the run-years") {
  const Axis axis = run_year_axis(3, stillground::Date{2027, 7, 1});
  REQUIRE(axis.ticks.size() == 3);
  CHECK(axis.ticks[0].below == "2027/28");
  CHECK(axis.ticks[2].below == "2029/30");
  CHECK(run_year_axis(3, stillground::Date{2099, 1, 1}).ticks[1].below == "2100");
  CHECK(calendar_years({2099, 7, 1}, 1) == "2099/00");
  CHECK(run_year_axis(3).ticks[0].below.empty());
}

TEST_CASE("No two calendar years meet, however long the run is") {
  for (const stillground::Date& start : {stillground::Date{2027, 7, 1}, stillground::Date{2027, 1, 1}}) {
    for (int years = 1; years <= 100; ++years) {
      const Axis axis = run_year_axis(years, start);
      CAPTURE(years);
      CHECK(axis.ticks.front().label == "1");
      CHECK(axis.ticks.back().label == std::to_string(years));
      for (std::size_t i = 0; i + 1 < axis.ticks.size(); ++i) {
        const double apart = (axis.ticks[i + 1].at - axis.ticks[i].at) / (axis.to - axis.from) * 570;
        CHECK(apart >= text_width(axis.ticks[i].below, 17));
      }
    }
  }
}

TEST_CASE("Room about a range keeps what lies at its ends off the frame") {
  const Axis axis = round_axis("T", with_room(range_of(6, 12), 0.02), 6);
  CHECK(axis.from < 6);
  CHECK(axis.to > 12);
  CHECK(with_room(Range(), 0.02).empty());
}

TEST_CASE("A logarithmic axis runs over whole powers of ten and names them as numbers") {
  const Axis axis = decade_axis("time [h]", range_of(-1.5, 2.2));
  CHECK(axis.from == -2);
  CHECK(axis.to == 3);
  CHECK(labels(axis) == std::vector<std::string>{"0.01", "0.1", "1", "10", "100", "1000"});
  CHECK(decade_axis("", range_of(0.3, 0.3)).to == 1);
}
