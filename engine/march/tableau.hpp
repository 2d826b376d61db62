#pragma once

#include <array>
#include <numbers>

namespace stillground::march {

/// ARS(2,2,2), a globally stiffly accurate implicit-explicit Runge-Kutta pair of order two: Ascher, Ruuth & Spiteri
/// 1997, Applied Numerical Mathematics 25, section 2.6. Stages 0, 1, 2 at c = 0, gamma, 1; the step ends at stage 2.
/// Stage 0 has no implicit part, so no slope is carried over an hour's end, where the load jumps.
namespace ars222 {
inline constexpr double gamma = 1 - 1 / std::numbers::sqrt2;
inline constexpr double delta = 1 - 1 / (2 * gamma);

inline constexpr std::array<double, 3> c = {0, gamma, 1};
inline constexpr std::array<std::array<double, 3>, 3> implicit = {{{0, 0, 0}, {0, gamma, 0}, {0, 1 - gamma, gamma}}};
inline constexpr std::array<std::array<double, 3>, 3> explicit_ = {{{0, 0, 0}, {gamma, 0, 0}, {delta, 1 - delta, 0}}};

/// Weights of a step's mean: implicit terms at stages 1 and 2, explicit terms at stages 0 and 1. Hourly means and
/// balances use them, never step ends.
inline constexpr std::array<double, 3> implicit_weight = implicit[2];
inline constexpr std::array<double, 3> explicit_weight = explicit_[2];

/// With Y = y + gamma h E(y) + gamma h I(Y) the first stage, the second's right side is
///   y + h (delta E(y) + (1 - delta) E(Y)) + (1 - gamma) h I(Y), and h I(Y) = (Y - y)/gamma - h E(y):
/// these parts of y and Y, and axial terms.
inline constexpr double second_of_first = (1 - gamma) / gamma;
inline constexpr double second_of_old = 1 - second_of_first;

/// |R(x)| <= 1 of the explicit part alone for -2 <= x <= 0 (R = 1 + x + x^2/2).
inline constexpr double real_stability = 2;
}  // namespace ars222

}  // namespace stillground::march
