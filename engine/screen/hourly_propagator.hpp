#pragma once

#include <Eigen/Core>
#include <array>

#include "engine/screen/circuit.hpp"

namespace stillground::screen {

/// What an hour makes of a circuit's whole state at one flow, by the march's own steps and stage weights
/// (march::ars222): a screening estimate and its march err alike by the time step.
struct FullPropagator {
  Eigen::MatrixXd after;      ///< state at the hour's end
  Eigen::RowVectorXd outlet;  ///< mean over the hour of the stream that leaves
  Eigen::RowVectorXd down;    ///< the same of the topmost cell of that which enters
};

/// `step` [s] divides an hour.
FullPropagator over_an_hour(const Circuit& circuit, const Eigen::MatrixXd& rates, double step);

/// A few proper orthogonal modes of the state (columns, orthonormal, [lasting][mode]) of which what occurs in it is
/// made but for little: rest, the undisturbed profile, and the strongest of what random hours of load and rest leave
/// behind (proper orthogonal decomposition).
Eigen::MatrixXd modes(const Circuit& circuit, const FullPropagator& standing, const FullPropagator& flowing);

/// The same on the modes' amplitudes, ready for the march through the hours: column after column.
struct HourlyPropagator {
  static constexpr std::size_t modes = 13;
  /// Rows after the modes': hour's means as in FullPropagator, and the heat through the mean metre of wall [J/m].
  static constexpr std::size_t outlet = modes, down = modes + 1, heat = modes + 2, rows = modes + 3;
  /// Columns after the modes': what drives the circuit.
  static constexpr std::size_t ambient = modes, change = modes + 1, profile = modes + 2, load = modes + 3,
                               columns = modes + 4;

  alignas(64) std::array<double, rows * columns> entries{};

  /// What follows from the amplitudes and what drives them.
  std::array<double, rows> times(const std::array<double, columns>& of) const;
  double at(std::size_t row, std::size_t column) const { return entries[column * rows + row]; }
};

HourlyPropagator on_modes(const Circuit& circuit, const FullPropagator& whole, const Eigen::MatrixXd& modes);

/// a + part (b - a).
HourlyPropagator between(const HourlyPropagator& a, const HourlyPropagator& b, double part);

}  // namespace stillground::screen
