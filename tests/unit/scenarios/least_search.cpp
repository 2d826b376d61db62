#include "tools/scenarios/least_search.hpp"

#include <cmath>
#include <set>

#include "tests/catch.hpp"

using namespace stillground::scenarios;

namespace {

/// 60.0, 60.1, ... 240.0
std::vector<double> depths() {
  std::vector<double> values;
  for (int i = 600; i <= 2400; ++i) values.push_back(i / 10.0);
  return values;
}

/// A field's margin by depth as it was found for thirty bores: 10.35 K less 1268 K m by the depth, with a kink where
/// the coldest hour turns laminar.
double margin(double depth) {
  return 10.35 - 1268 / depth + (depth > 122.6 ? 0.05 : 0.0) * (depth - 122.6) / 10;
}

/// A method that is asked for margins; counts how often.
struct Asked {
  std::function<double(std::size_t)> at;
  std::size_t looks = 0, rounds = 0;
  std::set<std::size_t> seen = {};

  Margins margins() {
    return [this](const std::vector<std::size_t>& places) {
      std::vector<double> found;
      for (const std::size_t place : places) {
        REQUIRE(seen.insert(place).second);  // nothing is looked at twice
        found.push_back(at(place));
      }
      looks += places.size();
      ++rounds;
      return found;
    };
  }
};

}  // namespace

TEST_CASE("The least depth of a fine list is found in eight looks, for any limit and start") {
  const auto values = depths();
  for (int limit = 0; limit < 40; ++limit) {
    for (const std::size_t start : {std::size_t{0}, std::size_t{600}, values.size() - 1}) {
      const double shift = -4 + 0.2 * limit;
      Asked asked{[&](std::size_t place) { return margin(values[place]) - shift; }};
      const Searched searched = search_least(values, asked.margins(), {.start = start});
      REQUIRE(searched.shape == Shape::crosses);
      CHECK(asked.looks <= 8);
      std::size_t least = 0;
      while (margin(values[least]) - shift < 0) ++least;
      CAPTURE(shift, start, values[least], values[searched.answer]);
      // Where a margin within 0.005 K ends the search, the line between its places points beside by a place or two.
      CHECK(std::abs(static_cast<double>(searched.answer) - static_cast<double>(least)) <= 2);
    }
  }
}

TEST_CASE("Another method that differs a little is met within four looks, two at a time") {
  const auto values = depths();
  for (const double bias : {-0.12, -0.03, 0.0, 0.01, 0.03, 0.12}) {
    Asked screening{[&](std::size_t place) { return margin(values[place]); }};
    const Searched searched = search_least(values, screening.margins(), {.start = 600});
    Asked march{[&](std::size_t place) { return margin(values[place]) + bias; }};
    const Confirmed confirmed = confirm_least(values, searched, march.margins());
    CAPTURE(bias);
    REQUIRE(confirmed.least);
    REQUIRE(confirmed.below);
    // Neighbours, or so near that a deeper look would save less than 0.03 K.
    if (std::abs(bias) <= 0.03) CHECK(*confirmed.least == *confirmed.below + 1);
    CHECK(margin(values[*confirmed.least]) + bias >= 0);
    CHECK(margin(values[*confirmed.least]) + bias <= 0.03);
    CHECK(margin(values[*confirmed.below]) + bias < 0);
    CHECK(march.looks <= 4);
    CHECK(march.rounds <= 2);
  }
}

TEST_CASE("Both neighbours of a list's answer are looked at, and a fall behind it is seen") {
  const std::vector<double> counts = {24, 26, 28, 30, 32, 34, 36, 38, 40};
  const auto by_count = [&](std::size_t place) { return margin(4 * counts[place]); };
  Asked rising{by_count};
  const Searched searched = search_least(counts, rising.margins(), {.start = 3, .neighbours = true});
  CHECK(searched.shape == Shape::crosses);
  CHECK(counts[searched.answer] == 32);
  CHECK(rising.seen.contains(searched.answer - 1));
  CHECK(rising.seen.contains(searched.answer + 1));
  CHECK(rising.looks <= 8);
  Asked falling{[&](std::size_t place) { return counts[place] == 34 ? -0.1 : by_count(place); }};
  CHECK(search_least(counts, falling.margins(), {.start = 3, .neighbours = true}).shape == Shape::no_order);
}

TEST_CASE("A list of which no value, or every value, keeps the limits is told as such") {
  const auto values = depths();
  Asked none{[](std::size_t) { return -0.5; }};
  CHECK(search_least(values, none.margins(), {.start = 10}).shape == Shape::none);
  Asked all{[](std::size_t) { return 0.5; }};
  const Searched searched = search_least(values, all.margins(), {.start = 10});
  CHECK(searched.shape == Shape::all);
  CHECK(searched.answer == 0);
  const std::vector<double> lone = {100};
  Asked one{[](std::size_t) { return 0.0; }};
  CHECK(search_least(lone, one.margins(), {}).shape == Shape::all);  // on the limit is within it
}

TEST_CASE("A dearer method that no value satisfies leaves no answer, and one that all satisfy leaves nothing below") {
  const std::vector<double> counts = {24, 26, 28, 30};
  Asked screening{[](std::size_t place) { return place >= 3 ? 0.1 : -0.1; }};
  const Searched searched = search_least(counts, screening.margins(), {.start = 1, .neighbours = true});
  Asked never{[](std::size_t) { return -0.2; }};
  const Confirmed refused = confirm_least(counts, searched, never.margins());
  CHECK(!refused.least);
  CHECK(refused.below == counts.size() - 1);
  Asked always{[](std::size_t place) { return 0.01 * static_cast<double>(1 + place); }};
  const Confirmed kept = confirm_least(counts, searched, always.margins());
  CHECK(kept.least == std::size_t{0});
  CHECK(!kept.below);
}

// By hand: the margin's derivative at 122.4 m is 1268/122.4^2 = 0.0846 K/m.
TEST_CASE("A metre more is worth what the line in the reciprocal says") {
  const auto values = depths();
  const std::vector<Tried> tried = {{500, margin(values[500])}, {624, margin(values[624])}};
  CHECK(slope_at(values, tried, 620) == Approx(1268 / (122.0 * 122.0)).epsilon(0.001));
}
