#include "engine/field/superposition.hpp"

#include <cmath>
#include <vector>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

std::vector<double> nodes() {
  std::vector<double> r(36);
  for (std::size_t i = 0; i < r.size(); ++i) r[i] = 0.08 * std::pow(1.26, static_cast<double>(i));
  return r;
}

double interpolate(double distance, double (*f)(double)) {
  const auto r = nodes();
  double sum = 0;
  for (const auto& w : field::radial_weights(r, distance)) sum += w.weight * f(r[w.cell]);
  return sum;
}

}  // namespace

// Lagrange interpolation through four points reproduces cubics (any numerical analysis text).
TEST_CASE("A cubic f in the logarithm is read exactly, off rings with h^2/72 (f''' + 3 f'') added") {
  const auto r = nodes();
  const double h = std::log(1.26);
  for (const double d : {0.09, 0.5, 3.0, 6.0, 8.485, 40.0, 200.0}) {
    double plain = 0, rings = 0;
    const auto cubic = [](double x) { return 2 - 3 * x + 0.5 * x * x - 0.1 * x * x * x; };
    for (const auto& w : field::logarithmic_weights(r, d)) plain += w.weight * cubic(std::log(r[w.cell]));
    for (const auto& w : field::radial_weights(r, d)) rings += w.weight * cubic(std::log(r[w.cell]));
    const double x = std::log(d);
    CHECK(plain == Approx(cubic(x)).epsilon(1e-12));
    CHECK(rings == Approx(cubic(x) + h * h / 72 * (-0.6 + 3 * (1 - 0.6 * x))).epsilon(1e-12));
  }
}

// Infinite line source E1(u), u = r^2/(4 a t): Carslaw & Jaeger 1959, 10.4(5); std::expint for E1. One year at 1e-6
// m2/s. Rings make E1 + h^2/18 (2 u^2 - 5 u) exp(-u) of it to the second order of h (by its moments: see ground::Grid).
TEST_CASE("A line source is read off its rings within half a per cent where it matters to neighbours") {
  const auto line = [](double r) { return -std::expint(-r * r / (4 * 1e-6 * 31536000)); };
  const auto rings = [](double r) {
    const double u = r * r / (4 * 1e-6 * 31536000), h = std::log(1.26);
    return -std::expint(-u) + h * h / 18 * (2 * u * u - 5 * u) * std::exp(-u);
  };
  for (const double d : {3.0, 5.0, 6.0, 8.485, 10.0, 12.0})
    CHECK(interpolate(d, rings) == Approx(line(d)).epsilon(0.005));
}

TEST_CASE("Inside the first node and beyond the last the end values are held") {
  const auto r = nodes();
  CHECK(field::radial_weights(r, 0.01)[0].cell == 0);
  CHECK(field::radial_weights(r, 0.01)[0].weight == 1);
  CHECK(field::radial_weights(r, 1e5)[0].cell == r.size() - 1);
}
