#pragma once

#include <complex>
#include <vector>

namespace stillground::bore {

/// One pipe in the cross-section of a bore.
struct SectionPipe {
  double x = 0;             ///< of its centre from the bore's axis [m]
  double y = 0;             ///< [m]
  double outer_radius = 0;  ///< [m], > 0
  double resistance = 0;    ///< film and pipe wall between fluid and outer surface, per length [K m/W], >= 0

  std::complex<double> centre() const { return {x, y}; }  ///< x + i y [m]
};

/// Pipes in a grouted bore, cut across: what the steady resistances follow from. The ground around has no end.
struct BoreSection {
  double radius = 0;               ///< r_b [m], > 0
  double grout_conductivity = 0;   ///< k_b [W/(m K)], > 0
  double ground_conductivity = 0;  ///< k [W/(m K)], > 0
  std::vector<SectionPipe> pipes;  ///< inside the bore and apart from each other; they may touch

  /// (k_b - k)/(k_b + k), the strength of the images in the bore wall: -1 < sigma < 1.
  double contrast() const {
    return (grout_conductivity - ground_conductivity) / (grout_conductivity + ground_conductivity);
  }
};

/// Throws InputError that names the pipe when the section cannot be built: no pipe, a length or conductivity that is
/// not positive and finite, a pipe that reaches out of the bore, two that overlap.
void check_section(const BoreSection& section);

}  // namespace stillground::bore
