#include "engine/march/radial.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/march/instruction_sets.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march {

namespace {

// theta: the ground's own rise [K], i: ring from the wall out, k: layer; factors as in radial.hpp.

/// e_i = (1/D_i) rhs_i + c_i e_{i+1},  c_i = kappa K_{i+1/2}/(C_i D_i), for every layer.
STILLGROUND_CLONED void inwards(std::size_t row, const double* rhs, const double* inverse, const double* carry,
                                const double* outer, double* e) {
  for (std::size_t k = 0; k < row; ++k) e[k] = inverse[k] * rhs[k] + carry[k] * outer[k];
}

/// theta_i = e_i + d_i theta_{i-1}, in place of e_i.
STILLGROUND_CLONED void outwards(std::size_t row, const double* drop, const double* inner, double* theta) {
  for (std::size_t k = 0; k < row; ++k) theta[k] += drop[k] * inner[k];
}

/// rate_k = a_k (theta_{k-1} - theta_k) + b_k (theta_{k+1} - theta_k), a and b the conductances of a layer's upper and
/// lower face over its capacity rho c dz [1/s].
STILLGROUND_CLONED void between_layers(std::size_t row, const double* above, const double* below, const double* theta,
                                       double* rate) {
  for (std::size_t k = 0; k < row; ++k) {
    rate[k] = above[k] * (theta[k - 1] - theta[k]) + below[k] * (theta[k + 1] - theta[k]);
  }
}

}  // namespace

double wall_to_first_node(const ground::Grid& grid, double conductivity) {
  return std::log(grid.r[0] / grid.r_faces[0]) / (2 * std::numbers::pi * conductivity);
}

RadialFactors::RadialFactors(const Problem& problem, double kappa)
    : nr_(problem.nr()),
      row_(StateLayout(problem).row()),
      ground_row_(StateLayout(problem).ground_row()),
      inverse_(nr_ * row_),
      carry_(nr_ * row_),
      drop_(nr_ * row_),
      wall_response_(row_) {
  std::vector<double> conductance, area;  // logarithms once a ring, not once a cell
  for (std::size_t i = 0; i < nr_; ++i) {
    conductance.push_back(i + 1 < nr_ ? problem.grid.unit_conductance(i) : 0.0);
    area.push_back(problem.grid.ring_area(i));
  }
  for (std::size_t k = 0; k < problem.nz(); ++k) {
    const model::Solid& solid = problem.grid.solid[k];
    double outer_drop = 0;  // beyond the outermost ring is adiabatic
    for (std::size_t i = nr_; i-- > 0;) {
      // D_i = 1 + kappa (K_{i-1/2} + K_{i+1/2} (1 - d_{i+1}))/C_i
      const double per_capacity = kappa / (solid.heat_capacity * area[i]);
      const double outward = solid.conductivity * conductance[i];
      const double inward = i > 0 ? solid.conductivity * conductance[i - 1] : 0.0;
      const double pivot = 1 + per_capacity * (inward + outward * (1 - outer_drop));
      const std::size_t at = i * row_ + k;
      inverse_[at] = 1 / pivot;
      carry_[at] = per_capacity * outward / pivot;
      drop_[at] = per_capacity * inward / pivot;
      outer_drop = drop_[at];
      if (i == 0) wall_response_[k] = per_capacity / pivot;
    }
  }
}

void RadialFactors::eliminate(const double* rhs, double* y) const {
  const double* from = rhs + ground_row_ * row_;
  double* e = y + ground_row_ * row_;
  const std::size_t outermost = (nr_ - 1) * row_;
  for (std::size_t k = 0; k < row_; ++k) e[outermost + k] = inverse_[outermost + k] * from[outermost + k];
  for (std::size_t i = nr_ - 1; i-- > 0;) {
    const std::size_t at = i * row_;
    inwards(row_, from + at, inverse_.data() + at, carry_.data() + at, e + at + row_, e + at);
  }
}

void RadialFactors::substitute(double* y) const {
  double* theta = y + ground_row_ * row_;
  for (std::size_t i = 1; i < nr_; ++i)
    outwards(row_, drop_.data() + i * row_, theta + (i - 1) * row_, theta + i * row_);
}

AxialFactors::AxialFactors(const Problem& problem)
    : nr_(problem.nr()),
      row_(StateLayout(problem).row()),
      ground_row_(StateLayout(problem).ground_row()),
      above_(row_),
      below_(row_),
      surface_(nr_) {
  for (std::size_t k = 0; k < problem.nz(); ++k) {
    const double capacity = problem.grid.solid[k].heat_capacity * problem.grid.height(k);
    above_[k] = problem.axial[k] / capacity;
    below_[k] = problem.axial[k + 1] / capacity;
  }
  for (std::size_t i = 0; i < nr_; ++i) surface_[i] = problem.axial[0] * problem.grid.ring_area(i);
}

void AxialFactors::rate(const double* y, double* rate) const {
  std::fill(rate, rate + ground_row_ * row_, 0.0);
  for (std::size_t i = 0; i < nr_; ++i) {
    const std::size_t at = (ground_row_ + i) * row_;
    between_layers(row_ - 1, above_.data(), below_.data(), y + at, rate + at);
    rate[at + row_ - 1] = 0;  // padding: its lower neighbour is the next row's first layer
  }
}

double AxialFactors::surface_loss(const double* y) const {
  double sum = 0;
  for (std::size_t i = 0; i < nr_; ++i) sum += surface_[i] * y[(ground_row_ + i) * row_];
  return sum;
}

}  // namespace stillground::march
