#include "validation/reference_solutions/bore_response.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stillground::reference_solutions {

namespace {

constexpr int terms = 12;  // more lose to round-off what they gain

double factorial(int n) {
  return std::tgamma(n + 1.0);
}

/// Stehfest's weights: V_n = (-1)^(n + N/2) sum over k of k^(N/2) (2k)! / ((N/2 - k)! k! (k - 1)! (n - k)! (2k - n)!).
std::array<double, terms> stehfest_weights() {
  std::array<double, terms> weights{};
  constexpr int half = terms / 2;
  for (int n = 1; n <= terms; ++n) {
    double sum = 0;
    for (int k = (n + 1) / 2; k <= std::min(n, half); ++k) {
      sum += std::pow(k, half) * factorial(2 * k) /
             (factorial(half - k) * factorial(k) * factorial(k - 1) * factorial(n - k) * factorial(2 * k - n));
    }
    weights[static_cast<std::size_t>(n - 1)] = (n + half) % 2 == 0 ? sum : -sum;
  }
  return weights;
}

double transformed(const std::vector<BorePart>& parts, double radius, double fluid, double s) {
  double admittance = fluid * s;
  for (const BorePart& part : parts) {
    const double x = radius * std::sqrt(s * part.heat_capacity / part.conductivity);
    const double ground =
        std::cyl_bessel_k(0.0, x) / (2 * std::numbers::pi * part.conductivity * x * std::cyl_bessel_k(1.0, x));
    const double outer = part.outer_grout * s + 1 / (part.outer + ground);
    const double inner = part.inner_grout * s + 1 / (part.middle + 1 / outer);
    admittance += part.share / (part.inner + 1 / inner);
  }
  return 1 / (s * admittance);
}

double ierf(double x) {
  return x * std::erf(x) + std::expm1(-x * x) / std::sqrt(std::numbers::pi);
}

}  // namespace

double fluid_response(const std::vector<BorePart>& parts, double radius, double fluid, double time) {
  static const auto weights = stehfest_weights();
  const double unit = std::numbers::ln2 / time;
  double sum = 0;
  for (int n = 1; n <= terms; ++n) {
    sum += weights[static_cast<std::size_t>(n - 1)] * transformed(parts, radius, fluid, n * unit);
  }
  return sum * unit;
}

double effect_of_ends(double conductivity, double heat_capacity, double radius, double top, double length,
                      double time) {
  // Both are integrals over s from 1/sqrt(4 a t) of exp(-r^2 s^2) times: finite I(Hs, Ds)/(H s^2), infinite 2/s.
  const auto integrand = [&](double s) {
    const double h = length * s, d = top * s;
    const double finite = 2 * ierf(h) + 2 * ierf(h + 2 * d) - ierf(2 * h + 2 * d) - ierf(2 * d);
    return std::exp(-radius * radius * s * s) * (finite / (length * s * s) - 2 / s);
  };
  const double from = 1 / std::sqrt(4 * conductivity / heat_capacity * time);
  const double span = std::log(std::max(20.0, 8 / (radius * from)));
  constexpr int panels = 2000;  // Simpson in ln s
  double sum = 0;
  for (int i = 0; i <= panels; ++i) {
    const double s = from * std::exp(span * i / panels);
    sum += (i == 0 || i == panels ? 1 : i % 2 == 1 ? 4 : 2) * s * integrand(s);
  }
  return sum * span / panels / 3 / (4 * std::numbers::pi * conductivity);
}

}  // namespace stillground::reference_solutions
