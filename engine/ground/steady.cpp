#include "engine/ground/steady.hpp"

#include <Eigen/Sparse>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/base/errors.hpp"
#include "engine/ground/axial.hpp"

namespace stillground::ground {

namespace {

constexpr double reach = 10;  // edges, in depths of the grid: a layer held at the surface decays by exp(-pi/2 r/depth)
constexpr double growth = 1.3;  // of the layers below the grid

Grid continued(const Grid& grid) {
  Grid wide = grid;
  const double far = reach * grid.z_faces.back();
  const double ratio = grid.r_faces[1] / grid.r_faces[0];
  while (wide.r_faces.back() < far) {
    wide.r_faces.push_back(wide.r_faces.back() * ratio);
    wide.r.push_back(wide.r.back() * ratio);
  }
  double height = grid.height(grid.nz() - 1);
  while (wide.z_faces.back() < far) {
    height *= growth;
    wide.z.push_back(wide.z_faces.back() + height / 2);
    wide.z_faces.push_back(wide.z_faces.back() + height);
    wide.solid.push_back(grid.solid.back());
  }
  return wide;
}

}  // namespace

struct Steady::System {
  std::size_t nr, nz;  // of the grid itself
  Grid wide;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors;
};

Steady::Steady(const Grid& grid, double surface_film) : system_(new System{grid.nr(), grid.nz(), continued(grid), {}}) {
  const Grid& wide = system_->wide;
  const auto axial = axial_conductances(wide, surface_film);
  const auto at = [&](std::size_t k, std::size_t i) { return static_cast<int>(k * wide.nr() + i); };
  std::vector<Eigen::Triplet<double>> entries;
  const auto link = [&](int a, int b, double conductance) {
    entries.emplace_back(a, a, conductance);
    entries.emplace_back(b, b, conductance);
    entries.emplace_back(std::max(a, b), std::min(a, b), -conductance);
  };
  for (std::size_t k = 0; k < wide.nz(); ++k) {
    for (std::size_t i = 0; i < wide.nr(); ++i) {
      const double area = wide.ring_area(i);
      if (i + 1 < wide.nr()) {
        link(at(k, i), at(k, i + 1), wide.unit_conductance(i) * wide.solid[k].conductivity * wide.height(k));
      }
      if (k + 1 < wide.nz()) link(at(k, i), at(k + 1, i), axial[k + 1] * area);
      if (k == 0) entries.emplace_back(at(0, i), at(0, i), axial[0] * area);
    }
  }
  const auto n = static_cast<Eigen::Index>(wide.nz() * wide.nr());
  Eigen::SparseMatrix<double> matrix(n, n);
  matrix.setFromTriplets(entries.begin(), entries.end());
  system_->factors.compute(matrix);
  if (system_->factors.info() != Eigen::Success)
    throw NumericsError("the steady state of the ground could not be solved");
}

Steady::~Steady() = default;
Steady::Steady(Steady&&) noexcept = default;

std::vector<double> Steady::rise(std::span<const double> wall_heat) const {
  const Grid& wide = system_->wide;
  Eigen::VectorXd source = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(wide.nz() * wide.nr()));
  for (std::size_t k = 0; k < system_->nz; ++k) {
    source[static_cast<Eigen::Index>(k * wide.nr())] = wall_heat[k] * wide.height(k);
  }
  const Eigen::VectorXd solution = system_->factors.solve(source);
  std::vector<double> rise;
  rise.reserve(system_->nz * system_->nr);
  for (std::size_t k = 0; k < system_->nz; ++k) {
    for (std::size_t i = 0; i < system_->nr; ++i)
      rise.push_back(solution[static_cast<Eigen::Index>(k * wide.nr() + i)]);
  }
  return rise;
}

}  // namespace stillground::ground
