#include "engine/response/exponentials.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::response;

namespace {

/// A response that a sum of exponentials with positive amplitudes can come as near as one likes, growing with the
/// logarithm of time as a bore's does [K m/W]. Invented.
double slow_growth(double time) {
  return 0.04 * std::log1p(time / 1000);
}

/// Samples of it under constant heat, two per cent of the time apart, the first so early that it does not matter how
/// the heat came about.
std::vector<Sample> of_slow_growth(double until) {
  std::vector<Sample> samples;
  for (double time = 1; time < until; time *= 1.02) samples.push_back({time, 1, slow_growth(time)});
  return samples;
}

}  // namespace

TEST_CASE("A step response is fitted within a per mille from ten minutes to 25 years") {
  const Fit found = fit(of_slow_growth(25 * 3.2e7), 60, 100 * 3.2e7);
  for (double time = 600; time < 25 * 3.1e7; time *= 1.3) {
    CHECK(found.response.after(time) == Approx(slow_growth(time)).epsilon(0.001));
  }
}

TEST_CASE("A fitted step response has no negative amplitude") {
  const Fit found = fit(of_slow_growth(1e9), 60, 4e9);
  REQUIRE(found.response.terms.size() > 5);
  CHECK(found.response.instant >= 0);
  for (const Exponential& term : found.response.terms) CHECK(term.amplitude > 0);
}

TEST_CASE("The misfit is the largest relative miss, and a sum of exponentials is found again") {
  const ExponentialResponse truth{0.01, {{600, 0.05}, {6e4, 0.1}, {6e6, 0.2}}};
  std::vector<Sample> samples;
  // Heat from the very start: the first sample stands a moment after it.
  for (double time = 1e-3; time < 1e8; time *= 1.05) samples.push_back({time, 1, truth.after(time)});
  const Fit found = fit(samples, 60, 1e8);
  CHECK(found.misfit < 1e-3);  // 600 s, 6e4 s and 6e6 s lie on the fit's own time constants
  CHECK(found.response.after(1e5) == Approx(truth.after(1e5)).epsilon(1e-3));
  samples[samples.size() / 2].rise *= 1.1;  // a spike that no positive sum follows
  CHECK(fit(samples, 60, 1e8).misfit > 0.05);
}
