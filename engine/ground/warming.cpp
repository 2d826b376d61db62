#include "engine/ground/warming.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "engine/ground/axial.hpp"

namespace stillground::ground {

namespace {

constexpr int steps_per_interval = 12;

/// The column's own cells: every grid cell cut into equal parts of at most 0.1 m near the surface, growing with depth.
struct Column {
  Grid grid;
  std::vector<std::size_t> owner;  // grid cell of each column cell
};

Column fine_column(const Grid& coarse) {
  Column column;
  column.grid.z_faces.push_back(0);
  for (std::size_t k = 0; k < coarse.nz(); ++k) {
    const double wanted = 0.1 + 0.1 * coarse.z_faces[k];
    const int parts = std::max(1, static_cast<int>(std::ceil(coarse.height(k) / wanted)));
    for (int part = 1; part <= parts; ++part) {
      column.grid.z_faces.push_back(
          std::lerp(coarse.z_faces[k], coarse.z_faces[k + 1], static_cast<double>(part) / parts));
      column.grid.solid.push_back(coarse.solid[k]);
      column.grid.z.push_back((column.grid.z_faces[column.grid.z.size()] + column.grid.z_faces.back()) / 2);
      column.owner.push_back(k);
    }
  }
  return column;
}

/// One Crank-Nicolson step of the column under the surface temperatures at its start and end (Thomas algorithm).
class Stepper {
 public:
  Stepper(const Grid& grid, double surface_film, double step) : conductance_(axial_conductances(grid, surface_film)) {
    for (std::size_t k = 0; k < grid.nz(); ++k)
      half_.push_back(step / (2 * grid.solid[k].heat_capacity * grid.height(k)));
  }

  void advance(std::vector<double>& theta, double surface_before, double surface_after) const {
    const std::size_t n = theta.size();
    std::vector<double> rhs(n), factor(n);
    for (std::size_t k = 0; k < n; ++k) {
      const double above = k == 0 ? surface_before : theta[k - 1];
      const double below = k + 1 == n ? theta[k] : theta[k + 1];
      rhs[k] = theta[k] + half_[k] * (conductance_[k] * (above - theta[k]) + conductance_[k + 1] * (below - theta[k]));
    }
    rhs[0] += half_[0] * conductance_[0] * surface_after;
    for (std::size_t k = 0; k < n; ++k) {
      const double lower = k == 0 ? 0.0 : half_[k] * conductance_[k];
      const double upper = half_[k] * conductance_[k + 1];
      const double pivot = 1 + half_[k] * conductance_[k] + upper - (k == 0 ? 0.0 : lower * factor[k - 1]);
      factor[k] = upper / pivot;
      rhs[k] = (rhs[k] + (k == 0 ? 0.0 : lower * rhs[k - 1])) / pivot;
    }
    theta[n - 1] = rhs[n - 1];
    for (std::size_t k = n - 1; k-- > 0;) theta[k] = rhs[k] + factor[k] * theta[k + 1];
  }

 private:
  std::vector<double> conductance_;
  std::vector<double> half_;  // step / (2 rho c dz)
};

}  // namespace

std::vector<double> surface_warming(const Grid& grid, double trend, double surface_film, double interval,
                                    double duration) {
  const Column column = fine_column(grid);
  const double step = interval / steps_per_interval;
  const Stepper stepper(column.grid, surface_film, step);
  std::vector<double> theta(column.grid.nz(), 0.0);
  std::vector<double> table(grid.nz(), 0.0);
  const int rows = static_cast<int>(std::ceil(duration / interval)) + 1;
  for (int row = 1; row <= rows; ++row) {
    for (int i = 0; i < steps_per_interval; ++i) {
      const double time = (row - 1) * interval + i * step;
      stepper.advance(theta, trend * time, trend * (time + step));
    }
    const std::size_t first = table.size();
    table.resize(first + grid.nz(), 0.0);
    for (std::size_t c = 0; c < theta.size(); ++c) {
      table[first + column.owner[c]] += theta[c] * column.grid.height(c) / grid.height(column.owner[c]);
    }
  }
  return table;
}

}  // namespace stillground::ground
