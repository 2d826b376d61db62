#pragma once

#include <cstddef>
#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

/// The radial part of one implicit stage, (I - kappa radial conduction) theta = rhs, eliminated from the outer edge
/// inwards for every layer at once. The factors depend on the ground alone: all groups, flows and hours share them.
///
/// With C_i = rho c A_i per height and K_{i+1/2} = 2 pi k/ln(r_{i+1}/r_i): theta_i = e_i + d_i theta_{i-1} with
///   D_i = 1 + kappa (K_{i-1/2} + K_{i+1/2} (1 - d_{i+1}))/C_i,  d_i = kappa K_{i-1/2}/(C_i D_i),
///   e_i = (rhs_i + kappa K_{i+1/2}/C_i e_{i+1})/D_i,
/// and at the wall theta_0 = e_0 + wall_response q_w, q_w the heat through the wall per height [W/m].
class RadialFactors {
 public:
  /// `kappa`: the stage's implicit weight, gamma times the step [s].
  RadialFactors(const Problem& problem, double kappa);

  /// Writes e over the ground rows of `y` from those of `rhs` (may be the same memory). Both are one group's block.
  void eliminate(const double* rhs, double* y) const;

  /// Finishes theta_i = e_i + d_i theta_{i-1} outwards from the innermost row, which must hold theta_0 already.
  void substitute(double* y) const;

  const Vector& wall_response() const { return wall_response_; }  ///< [z], K m/W, padding zero
  const Vector& inverse() const { return inverse_; }              ///< 1/D_i, [ring][z], padding zero as in all of these
  const Vector& carry() const { return carry_; }                  ///< kappa K_{i+1/2}/(C_i D_i), [ring][z]
  const Vector& drop() const { return drop_; }                    ///< d_i, [ring][z]

 private:
  std::size_t nr_, row_, ground_row_;
  Vector inverse_, carry_, drop_;
  Vector wall_response_;
};

/// Resistance of the ground between the bore wall and the first node, per height [K m/W], at conductivity k.
double wall_to_first_node(const ground::Grid& grid, double conductivity);

/// Axial conduction and the loss through the surface: the explicit part of the march, for one group's block at a time.
class AxialFactors {
 public:
  explicit AxialFactors(const Problem& problem);

  /// rate = axial conduction of y [K/s]; the in-bore rows of `rate` become zero.
  void rate(const double* y, double* rate) const;

  /// Heat that leaves one bore's ground through the surface [W].
  double surface_loss(const double* y) const;

  const Vector& above() const { return above_; }  ///< rate through the upper face [z] [1/s], padding zero
  const Vector& below() const { return below_; }
  const std::vector<double>& surface() const { return surface_; }  ///< conductance to the surface [r] [W/K]

 private:
  std::size_t nr_, row_, ground_row_;
  Vector above_;  // conductance of the upper face over rho c dz, [z]
  Vector below_;
  std::vector<double> surface_;  // conductance times ring area, [r] [W/K]
};

}  // namespace stillground::march
