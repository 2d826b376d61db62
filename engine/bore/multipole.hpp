#pragma once

#include <Eigen/Core>

#include "engine/bore/section.hpp"

namespace stillground::bore {

/// Steady temperatures in and around a bore for unit heat from each of its pipes, as line sources and multipoles of
/// `order` at the pipes' centres with their images in the bore wall.
///
/// T = Re sum_n { q_n/(2 pi k_b) [ln(r_b/(z - z_n)) + sigma ln(r_b^2/(r_b^2 - z conj(z_n)))]
///              + sum_j [P_nj (r_n/(z - z_n))^j + sigma conj(P_nj) (r_n z/(r_b^2 - z conj(z_n)))^j] }   in the grout,
/// z = x + i y. The mean of T round the bore wall is 0: all temperatures count from it.
struct Multipoles {
  BoreSection section;
  int order = 0;      ///< J >= 0; 0: line sources alone
  double change = 0;  ///< of the resistances when the order was last raised, relative to the largest; 0: never raised
  Eigen::MatrixXd resistance;  ///< [pipe][pipe]: T_fluid,i - mean wall = sum_j R_ij q_j [K m/W]; symmetric
  Eigen::MatrixXcd strength;   ///< [n J + j - 1][m]: P_nj for unit heat from pipe m alone [K m/W]
};

/// Solves the boundary conditions T_fluid - T = 2 pi r_n R_n (local flux) on every pipe, mode by mode up to `order`
/// (0..60). Throws InputError as check_section does. Source: Claesson & Hellstrom (2011), Multipole method to calculate
/// borehole thermal resistances in a borehole heat exchanger, HVAC&R Research 17(6) [equations derived anew from the
/// boundary conditions, not quoted].
Multipoles solve_multipoles(const BoreSection& section, int order);

/// The same with the order raised until no element of the resistance matrix changes by more than 1e-10 of the largest.
/// Pipes that touch converge slowly: at order 60 a change up to 1e-5, far below what any input is known to, is returned
/// as it is (see Multipoles::change). Throws NumericsError beyond that.
Multipoles solve_multipoles(const BoreSection& section);

}  // namespace stillground::bore
