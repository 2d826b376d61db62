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

/// Which part of the grout a mean is taken over.
enum class GroutPart {
  whole,
  right  ///< x > 0; a pipe stands to one side or in the middle of x = 0
};

/// Mean temperature of the grout (bore without the pipes' outer circles) above the mean bore-wall temperature [K].
///
/// By Green's identity with phi = x^2/2, whose Laplacian is 1: the integral of T over the area is that of
/// T dphi/dn - phi dT/dn round its edge, and phi and dphi/dn vanish on x = 0, so that half a bore needs no integral
/// along the cut. Midpoint sums on 128 points of the wall and 64 of each pipe: within 1e-8 of the largest temperature.
double mean_grout_temperature(const SectionField& field, GroutPart part);

/// Mean temperature above the mean bore-wall temperature [K], and mean of its square [K2], over the grout of the first
/// pipe's sector of the bore; pipes evenly round the axis at equal or alternating heats, the first on the x axis. By
/// rays from that pipe. Within 0.5 %.
double mean_sector_temperature(const SectionField& field);
double mean_square_grout_temperature(const SectionField& field);

/// Mean temperature of the bore wall within `angle` of the x axis, either side of it, above that of the whole wall [K].
/// Within 1e-5 of the largest.
double mean_wall_temperature(const SectionField& field, double angle);

}  // namespace stillground::bore
