#pragma once

#include <array>
#include <cstddef>
#include <span>

namespace stillground::field {

/// A radial cell and its share in an interpolated value.
struct RadialWeight {
  std::size_t cell = 0;
  double weight = 0;
};

/// Weights of a cubic (Lagrange) in the logarithm through the four nodes about a place. `nodes` are rising, positive,
/// at least four. Inside the first node its value is held, beyond the last node that one's. The weights sum to 1.
std::array<RadialWeight, 4> logarithmic_weights(std::span<const double> nodes, double at);

/// Reads a bore's own temperature rise theta at a distance from its axis off its marched rings, with the weights of
/// the cubic in x = ln r, and h^2/72 (theta''' + 3 theta'') of that cubic, which is what rings h apart in x fall short
/// by at a front (see ground::Grid).
class RadialReader {
 public:
  /// `r`: the grid's nodes, of equal ratio [m], at least four.
  explicit RadialReader(std::span<const double> r);

  /// The four cells and their weights, which sum to 1, at `distance` [m]. Inside the first node its value is held,
  /// beyond the last node that one's (the outer edge is adiabatic and far away).
  std::array<RadialWeight, 4> weights(double distance) const;

 private:
  double first_;      // node [m]
  std::size_t last_;  // node's number
  double width_;      // of a ring in ln r
};

/// RadialReader's weights for a single distance.
std::array<RadialWeight, 4> radial_weights(std::span<const double> r, double distance);

}  // namespace stillground::field
