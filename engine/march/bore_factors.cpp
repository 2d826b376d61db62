#include "engine/march/bore_factors.hpp"

namespace stillground::march {

namespace {

/// Rows of the work space, each row() long.
enum Work : std::size_t { source_even = 0, source_odd = 1, down_part = 2, up_part = 3, far_field = 4 };

}  // namespace

BoreFactors::BoreFactors(const Problem& problem, const Group& group, const FlowRegime& regime,
                         const RadialFactors& radial, double kappa)
    : flows_(regime.heat_rate > 0), first_(group.first), row_(problem.row()), layers_(group.past - group.first) {
  double gain_below = 1;  // at the toe the streams are one
  for (std::size_t n = layers_.size(); n-- > 0;) {
    const std::size_t k = first_ + n;
    const bore::Network& net = regime.networks[k];
    Layer& layer = layers_[n];
    layer.fraction = group.fraction[k];
    layer.length = layer.fraction * problem.grid.height(k);
    layer.wall_response = radial.wall_response()[k];
    layer.storage = net.fluid_capacity * layer.length / kappa;

    const double outer = net.even.outer + wall_to_first_node(problem.grid, problem.grid.solid[k].conductivity) +
                         layer.fraction * layer.wall_response;
    layer.inverse_outer = 1 / outer;
    layer.even_in = kappa / (net.even.capacity * net.even.inner);
    layer.even_out = kappa / (net.even.capacity * outer);
    layer.even_gain = 1 / (1 + layer.even_in + layer.even_out);
    layer.even_conductance = 1 / net.even.inner;
    layer.odd_in = kappa / (net.odd.capacity * net.odd.inner);
    layer.odd_gain = 1 / (1 + layer.odd_in + kappa / (net.odd.capacity * net.odd.outer));
    layer.odd_conductance = 1 / net.odd.inner;

    // Conductances of the modes with the grout eliminated.
    const double even = layer.even_conductance * (1 - layer.even_gain * layer.even_in);
    const double odd = layer.odd_conductance * (1 - layer.odd_gain * layer.odd_in);
    if (!flows_) {
      layer.i11 = 1 / (2 * layer.storage + layer.length * even);  // mean of the streams
      layer.i22 = 1 / (layer.storage + layer.length * odd);       // half their difference
      continue;
    }
    const double w = regime.heat_rate;
    const double p = layer.length * (even / 8 + odd / 4);
    const double m = layer.length * (even / 8 - odd / 4);
    const double diagonal = layer.storage + w + p;
    const double a11 = diagonal + m * gain_below;
    const double a21 = m + (p - w) * gain_below;
    const double determinant = a11 * diagonal - m * a21;
    layer.i11 = diagonal / determinant;
    layer.i12 = -m / determinant;
    layer.i21 = -a21 / determinant;
    layer.i22 = a11 / determinant;
    layer.mixed = m;
    layer.counter = w - p;
    layer.down_from_inlet = layer.i11 * layer.counter - layer.i12 * m;
    layer.gain = layer.i21 * layer.counter - layer.i22 * m;
    gain_below = layer.gain;
  }
  gain_ = flows_ ? gain_below : 0.0;
}

double BoreFactors::eliminate(const double* rhs, const double* y, const double* ambient, std::span<double> work) const {
  double* even_source = work.data() + source_even * row_;
  double* odd_source = work.data() + source_odd * row_;
  double* down = work.data() + down_part * row_;
  double* up = work.data() + up_part * row_;
  double* far = work.data() + far_field * row_;
  const double* theta = y + rows::ground * row_;

  for (std::size_t n = 0; n < layers_.size(); ++n) {
    const std::size_t k = first_ + n;
    const Layer& layer = layers_[n];
    far[k] = ambient[k] + theta[k];
    even_source[k] = layer.even_conductance * layer.even_gain * (rhs[rows::even * row_ + k] + layer.even_out * far[k]);
    odd_source[k] = layer.odd_conductance * layer.odd_gain * rhs[rows::odd * row_ + k];
  }
  if (!flows_) return 0;

  double below = 0;  // v' = gain' u' + below
  for (std::size_t n = layers_.size(); n-- > 0;) {
    const std::size_t k = first_ + n;
    const Layer& layer = layers_[n];
    const double x = layer.storage * rhs[rows::down * row_ + k] + layer.length * (even_source[k] / 2 + odd_source[k]) -
                     layer.mixed * below;
    const double z = layer.storage * rhs[rows::up * row_ + k] + layer.length * (even_source[k] / 2 - odd_source[k]) +
                     layer.counter * below;
    down[k] = layer.i11 * x + layer.i12 * z;
    up[k] = layer.i21 * x + layer.i22 * z;
    below = up[k];
  }
  return below;
}

void BoreFactors::substitute(double inlet, const double* rhs, double* y, std::span<double> work,
                             double* wall_heat) const {
  const double* even_source = work.data() + source_even * row_;
  const double* odd_source = work.data() + source_odd * row_;
  const double* down = work.data() + down_part * row_;
  const double* up = work.data() + up_part * row_;
  const double* far = work.data() + far_field * row_;
  double* y_down = y + rows::down * row_;
  double* y_up = y + rows::up * row_;

  if (flows_) {
    double u = inlet;
    for (std::size_t n = 0; n < layers_.size(); ++n) {
      const std::size_t k = first_ + n;
      y_up[k] = up[k] + layers_[n].gain * u;
      u = down[k] + layers_[n].down_from_inlet * u;
      y_down[k] = u;
    }
  }
  double above = inlet;
  for (std::size_t n = 0; n < layers_.size(); ++n) {
    const std::size_t k = first_ + n;
    const Layer& layer = layers_[n];
    double mean = 0, half_difference = 0;
    if (flows_) {
      const double below = n + 1 < layers_.size() ? y_up[k + 1] : y_down[k];
      mean = (above + y_down[k] + y_up[k] + below) / 4;
      half_difference = (above + y_down[k] - y_up[k] - below) / 4;
      above = y_down[k];
    } else {
      const double rhs_down = rhs[rows::down * row_ + k];
      const double rhs_up = rhs[rows::up * row_ + k];
      mean = layer.i11 * (layer.storage * (rhs_down + rhs_up) + layer.length * even_source[k]);
      half_difference = layer.i22 * (layer.storage * (rhs_down - rhs_up) / 2 + layer.length * odd_source[k]);
      y_down[k] = mean + half_difference;
      y_up[k] = mean - half_difference;
    }
    const double even = layer.even_gain * (rhs[rows::even * row_ + k] + layer.even_in * mean + layer.even_out * far[k]);
    y[rows::even * row_ + k] = even;
    y[rows::odd * row_ + k] = layer.odd_gain * (rhs[rows::odd * row_ + k] + layer.odd_in * half_difference);
    wall_heat[k] = layer.fraction * (even - far[k]) * layer.inverse_outer;
    y[rows::ground * row_ + k] += layer.wall_response * wall_heat[k];
  }
}

}  // namespace stillground::march
