#include "engine/march/radial_modes.hpp"

#include <cmath>
#include <limits>

#include "engine/march/radial.hpp"
#include "tests/catch.hpp"

using namespace stillground;

namespace {

ground::Grid grid(int rings = 36) {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {2.5, 2.2e6}}}, model::MeanOverBore{285}};
  return ground::make_grid({0.075, 300, rings, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
}

/// What flows into each ring from its neighbours per unit of conductivity, over its area: -L theta/A.
std::vector<double> conduction(const ground::Grid& grid, const std::vector<double>& theta) {
  std::vector<double> rate(theta.size());
  for (std::size_t i = 0; i + 1 < theta.size(); ++i) {
    const double flow = grid.unit_conductance(i) * (theta[i] - theta[i + 1]);
    rate[i] -= flow / grid.ring_area(i);
    rate[i + 1] += flow / grid.ring_area(i + 1);
  }
  return rate;
}

/// Wall per heat that came in at once `time` [m2, alpha t] ago.
double response(const std::vector<double>& rates, const std::vector<double>& weights, std::size_t count, double time) {
  double sum = 0;
  for (std::size_t m = 0; m < count; ++m) sum += weights[m] * std::exp(-rates[m] * time);
  return sum;
}

}  // namespace

TEST_CASE("Each radial mode only decays: it keeps its shape at its own rate") {
  const auto g = grid();
  const march::RadialModes modes(g);
  for (std::size_t m = 0; m < modes.size(); ++m) {
    std::vector<double> theta;
    double largest = 0;
    for (std::size_t i = 0; i < modes.size(); ++i) {
      theta.push_back(modes.shape(i, m));
      largest = std::max(largest, std::abs(theta.back()));
    }
    const auto rate = conduction(g, theta);
    for (std::size_t i = 0; i < modes.size(); ++i) {
      // Round-off of the quickest mode, of which every ring's flow has a trace.
      CHECK(std::abs(rate[i] + modes.rates()[m] * theta[i]) < 1e-11 * modes.rates().back() * largest);
    }
  }
}

TEST_CASE("Heat at the wall goes into all radial modes equally, and starts in the innermost ring alone") {
  const auto g = grid();
  const march::RadialModes modes(g);
  for (std::size_t i = 0; i < modes.size(); ++i) {
    double sum = 0;
    for (std::size_t m = 0; m < modes.size(); ++m) sum += modes.shape(i, m);
    CHECK(sum * g.ring_area(0) == Approx(i == 0 ? 1 : 0).margin(1e-10));
  }
}

TEST_CASE("The first radial mode is the heat itself: uniform, and it never decays") {
  const auto g = grid();
  const march::RadialModes modes(g);
  double area = 0;
  for (std::size_t i = 0; i < g.nr(); ++i) area += g.ring_area(i);
  CHECK(modes.rates().front() == 0);
  for (std::size_t i = 0; i < g.nr(); ++i) CHECK(modes.shape(i, 0) * area == Approx(1).epsilon(1e-9));
}

// A Gauss-Radau quadrature of n nodes is exact for polynomials up to degree 2 n - 2 (Golub 1973).
TEST_CASE("Reduced modes have the slow modes' moments, and none takes heat away") {
  const march::RadialModes modes(grid());
  const std::size_t slow = 24, count = 5;
  const march::ReducedModes reduced_modes(modes, slow, count);
  CHECK(reduced_modes.rates.front() == 0);
  for (const double weight : reduced_modes.weights) CHECK(weight > 0);
  for (int degree = 0; degree <= 8; ++degree) {
    double of_modes = 0, of_reduced = 0;
    for (std::size_t m = 0; m < slow; ++m) of_modes += modes.weights()[m] * std::pow(modes.rates()[m], degree);
    for (std::size_t l = 0; l < count; ++l)
      of_reduced += reduced_modes.weights[l] * std::pow(reduced_modes.rates[l], degree);
    CHECK(of_reduced == Approx(of_modes).epsilon(1e-9));
  }
}

TEST_CASE("What a slow mode takes back from its reduced modes is all of the heat, and hardly late") {
  const march::RadialModes modes(grid());
  const std::size_t slow = 24, count = 5;
  const march::ReducedModes reduced_modes(modes, slow, count);
  const double span = 4 / modes.rates()[slow - 1];  // alpha t in which the quickest of them decays by e^4
  for (std::size_t m = 0; m < slow; ++m) {
    double all = 0, decayed = 0;
    for (std::size_t l = 0; l < count; ++l) {
      all += reduced_modes.share[m * count + l];
      decayed += reduced_modes.share[m * count + l] * std::exp(-reduced_modes.rates[l] * span);
    }
    CHECK(all == Approx(1).epsilon(1e-12));
    CHECK(std::abs(decayed - std::exp(-modes.rates()[m] * span)) < 0.02);
  }
  for (const double part : {0.02, 0.1, 0.3, 1.0}) {
    const double exact = response(modes.rates(), modes.weights(), slow, part * span);
    CHECK(response(reduced_modes.rates, reduced_modes.weights, count, part * span) == Approx(exact).epsilon(1e-5));
  }
}
