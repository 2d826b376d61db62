#pragma once

#include <Eigen/Core>
#include <complex>

#include "engine/bore/multipole.hpp"

namespace stillground::bore {

/// Steady temperatures round a bore whose pipes give off given heats.
struct SectionField {
  BoreSection section;
  Eigen::VectorXd heat;       ///< of each pipe, per length, positive out of it [W/m]
  Eigen::VectorXcd strength;  ///< P_nj [K], ordered as Multipoles::strength
};

/// One point of the field.
struct FieldPoint {
  double temperature = 0;              ///< above the mean bore-wall temperature [K]
  std::complex<double> gradient = {};  ///< dT/dx + i dT/dy [K/m]
};

/// The field of `heat` (one value a pipe) [W/m].
SectionField field_of(const Multipoles& multipoles, const Eigen::VectorXd& heat);

/// The grout's solution at z = x + i y [m]: in the bore outside the pipes, up to and on their circles and the bore
/// wall.
FieldPoint grout_point(const SectionField& field, std::complex<double> z);

/// The ground's solution, |z| >= bore radius.
FieldPoint ground_point(const SectionField& field, std::complex<double> z);

/// Mean temperature of the grout (bore without the pipes' outer circles) above the mean bore-wall temperature [K].
///
/// By Green's identity with phi = x^2/2, whose Laplacian is 1: the integral of T over the area is that of
/// T dphi/dn - phi dT/dn round its edge. Midpoint sums on 128 points of the wall and 64 of each pipe: within 1e-8 of
/// the largest temperature.
double mean_grout_temperature(const SectionField& field);

/// Mean square of the temperature above the mean bore-wall temperature [K2] over the grout of a pipe's sector of the
/// bore; pipes evenly round the axis, heats alike, or of the other sign, on either side of that pipe. By rays from it.
/// Within 0.5 %.
double mean_square_temperature(const SectionField& field, std::size_t pipe);

/// Mean temperature of the bore wall within `angle` of the x axis, either side of it, above that of the whole wall [K].
/// Within 1e-5 of the largest.
double mean_wall_temperature(const SectionField& field, double angle);

}  // namespace stillground::bore
