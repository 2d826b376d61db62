#pragma once

#include <cstddef>
#include <vector>

#include "engine/ground/grid.hpp"

namespace stillground::march {

/// The modes in which heat spreads from ring to ring. With ring areas A_i and unit conductances g_i between nodes,
/// L the matrix of g, the modes are those of L v = lambda A v, V^T A V = 1: the same for every layer, whose
/// diffusivity alpha only sets their pace. As amplitudes x_m [K m2] and their shapes S_im = V_im V_0m [1/m2],
///   theta_i = sum_m S_im x_m,   x_m' = -alpha lambda_m x_m + q/(rho c),
/// q the heat through the wall per height [W/m]. Mode 0 is uniform, lambda_0 = 0: rho c x_0 is the layer's heat per
/// height [J/m].
class RadialModes {
 public:
  explicit RadialModes(const ground::Grid& grid);

  std::size_t size() const { return rates_.size(); }
  const std::vector<double>& rates() const { return rates_; }      ///< lambda, ascending [1/m2]
  const std::vector<double>& weights() const { return weights_; }  ///< S_0m: theta_0 = sum_m weight_m x_m [1/m2]
  double shape(std::size_t ring, std::size_t mode) const { return shapes_[ring * size() + mode]; }  ///< S [1/m2]

 private:
  std::vector<double> rates_, weights_;
  std::vector<double> shapes_;  // [ring][mode]
};

/// A few decaying amplitudes that reproduce many slow modes over a time in which none of those decays much: nodes and
/// weights of the Gauss-Radau quadrature (Golub 1973, SIAM Review 15, section 7) of the measure that has the slow
/// modes' weights at their rates, one node at rate 0, so that heat is kept to the last bit. What follows the wall's
/// heat, sum_m w_m e^{-lambda_m s}, becomes the quadrature's; a single mode's decay the polynomial in lambda through
/// the nodes' decays.
struct ReducedModes {
  /// Of modes [0, slow), `count` < slow of them.
  ReducedModes(const RadialModes& modes, std::size_t slow, std::size_t count);

  std::size_t slow;             ///< modes they stand for
  std::vector<double> rates;    ///< [reduced mode], ascending from 0 [1/m2]
  std::vector<double> weights;  ///< [reduced mode], all positive [1/m2]
  std::vector<double> share;  ///< [mode][reduced]: what a mode gains as its part of what a reduced one gains; sums to 1
  std::vector<double> start;  ///< [mode][reduced]: a reduced mode's start, sum over the modes of this times x_m
};

}  // namespace stillground::march
