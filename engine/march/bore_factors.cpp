#include "engine/march/bore_factors.hpp"

namespace stillground::march {

namespace {

/// Rows of the work space, each row() long.
enum Work : std::size_t { source_even = 0, source_odd = 1, down_part = 2, up_part = 3, far_field = 4 };

}  // namespace

BoreFactors::Chain::Chain(const bore::Mode& mode, double beyond, double kappa)
    : in(kappa / (mode.inner_capacity * mode.inner)),
      forth(kappa / (mode.inner_capacity * mode.middle)),
      back(kappa / (mode.outer_capacity * mode.middle)),
      outward(kappa / (mode.outer_capacity * beyond)),
      outer_gain(1 / (1 + back + outward)),
      conductance(1 / mode.inner) {
  inner_gain = 1 / (1 + in + forth * (1 - outer_gain * back));
}

double BoreFactors::Chain::inner(double rhs_inner, double from_outer) const {
  return inner_gain * (rhs_inner + forth * from_outer);
}

double BoreFactors::Chain::from_outer(double rhs_outer, double far_end) const {
  return outer_gain * (rhs_outer + outward * far_end);
}

double BoreFactors::Chain::settle(double fluid, double far_end, const double* rhs, double* y, std::size_t at_inner,
                                  std::size_t at_outer) const {
  const double alone = from_outer(rhs[at_outer], far_end);
  y[at_inner] = inner(rhs[at_inner] + in * fluid, alone);
  y[at_outer] = alone + outer_gain * back * y[at_inner];
  return y[at_outer];
}

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
    layer.even = Chain(net.even, outer, kappa);
    layer.odd = Chain(net.odd, net.odd.outer, kappa);

    // Conductances of the modes with the grout eliminated.
    const double even = layer.even.left();
    const double odd = layer.odd.left();
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
    const double even_outer = layer.even.from_outer(rhs[rows::even_outer * row_ + k], far[k]);
    const double odd_outer = layer.odd.from_outer(rhs[rows::odd_outer * row_ + k], 0);
    even_source[k] = layer.even.conductance * layer.even.inner(rhs[rows::even_inner * row_ + k], even_outer);
    odd_source[k] = layer.odd.conductance * layer.odd.inner(rhs[rows::odd_inner * row_ + k], odd_outer);
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
    const double even_outer =
        layer.even.settle(mean, far[k], rhs, y, rows::even_inner * row_ + k, rows::even_outer * row_ + k);
    layer.odd.settle(half_difference, 0, rhs, y, rows::odd_inner * row_ + k, rows::odd_outer * row_ + k);
    wall_heat[k] = layer.fraction * (even_outer - far[k]) * layer.inverse_outer;
    y[rows::ground * row_ + k] += layer.wall_response * wall_heat[k];
  }
}

}  // namespace stillground::march
