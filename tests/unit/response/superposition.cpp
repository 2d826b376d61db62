#include "engine/response/superposition.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

/// Heat before each hour of a load that jumps about.
struct Load {
  std::vector<double> heat, before{0};

  explicit Load(int hours) {
    for (int h = 0; h < hours; ++h) {
      heat.push_back(std::sin(h * 12.9898) * 3000 + (h % 7) * 100);
      before.push_back(before.back() + heat.back());
    }
  }
};

}  // namespace

// The definition, term by term; round-off of sums of some 1e5 W h at values of 1e-3 K/W: 1e-9 K is generous.
TEST_CASE("Superposition by sums over the knots is the plain sum over all changes of the load") {
  const Load load(600);
  const response::StepResponse u({0, 1, 2, 3, 10, 50, 400}, {1e-3, 2e-3, 1.5e-3, 1e-4, -3e-4, 2e-3, 2.4e-3});
  for (const long hour : {0L, 1L, 5L, 49L, 50L, 51L, 399L, 400L, 599L}) {
    double plain = 0;
    for (long h = 0; h <= hour; ++h) {
      const auto i = static_cast<std::size_t>(h);
      plain += u.after(hour - h) * (load.heat[i] - (h > 0 ? load.heat[i - 1] : 0.0));
    }
    INFO("hour " << hour);
    CHECK(std::abs(response::superposed(u, load.before, hour) - plain) < 1e-9);
    CHECK(std::abs(response::superposed(u, load.before)[static_cast<std::size_t>(hour)] - plain) < 1e-9);
  }
}

TEST_CASE("A constant load is answered by the step response itself, held beyond its last knot") {
  const std::vector<double> before{0, 2, 4, 6, 8, 10, 12, 14};
  const response::StepResponse u({0, 1, 4}, {0.5, 1.0, 4.0});
  CHECK(u.after(3) == Approx(3.0));
  CHECK(u.after(100) == 4.0);
  for (long hour = 0; hour < 7; ++hour) CHECK(response::superposed(u, before, hour) == Approx(2 * u.after(hour)));
}

TEST_CASE("The recursion equals the sum over all hours so far, to round-off") {
  const std::vector<response::Exponential> terms = {{900, 0.02}, {4e4, 0.05}, {3e6, 0.1}, {8e8, 0.3}};
  const response::ExponentialResponse u{0, terms};
  response::RunningSuperposition superposition(terms, 3600);
  std::vector<double> heat;
  unsigned state = 1;
  for (int hour = 0; hour < 400; ++hour) {
    state = state * 1664525U + 1013904223U;
    heat.push_back(static_cast<double>(state >> 16) / 1000 - 30);
    superposition.advance(heat.back());
  }
  const auto exact = [&](double hours) {
    double sum = 0;
    for (std::size_t h = 0; h < heat.size(); ++h) {
      const double since = hours - static_cast<double>(h);
      sum += heat[h] * (u.after(3600 * since) - u.after(3600 * (since - 1)));
    }
    return sum;
  };
  CHECK(superposition.rise() == Approx(exact(400)).epsilon(1e-12));
  CHECK(superposition.history_term() == Approx(exact(401)).epsilon(1e-12));
}

// Both forms of one step response: at a knot an hour, and as exponentials. The mean over an hour is asked of neither.
TEST_CASE("A step response says the same at knots as in exponentials") {
  const std::vector<response::Exponential> terms = {{4e4, 0.05}, {3e6, 0.1}};
  const response::ExponentialResponse smooth{0, terms};
  const Load load(300);
  std::vector<long> hours;
  std::vector<double> values;
  for (long n = 0; n <= 300; ++n) {
    hours.push_back(n);
    values.push_back(smooth.after(3600.0 * static_cast<double>(n + 1)));  // at the end of the n-th hour
  }
  const auto by_knots = response::superposed(response::StepResponse(hours, values), load.before);
  response::RunningSuperposition running(terms, 3600);
  for (std::size_t h = 0; h < load.heat.size(); ++h) {
    running.advance(load.heat[h]);
    REQUIRE(by_knots[h] == Approx(running.rise()).margin(1e-9));
  }
}
