#pragma once

#include <vector>

namespace stillground::validation {

/// What a thermal response test is read for.
struct Reading {
  double conductivity = 0;  ///< of the ground [W/(m K)]
  double resistance = 0;    ///< R_b* [K m/W]
};

/// The usual reading: T = T0 + q/(4 pi k) (ln(4 a t/r^2) - 0.5772) + q R, a straight line in ln t, by least squares
/// over the hours from `first` on. `rise`: hourly means of (EFT + LFT)/2 above T0 [K] under `heat` q [W/m];
/// `capacity`: the ground's, taken as known [J/(m3 K)]; `radius`: of the bore [m]. Source: Mogensen 1983 [from memory].
Reading read_line_source(const std::vector<double>& rise, int first, double heat, double capacity, double radius);

}  // namespace stillground::validation
