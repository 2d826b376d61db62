#include <fmt/format.h>

#include <Eigen/Dense>
#include <cmath>
#include <limits>
#include <numbers>

#include "engine/ground/axial.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"
#include "validation/convergence/claims.hpp"

namespace stillground::validation {

namespace {

constexpr double pi = std::numbers::pi;

/// A problem that holds nothing but a grid: the ground's operators ask for no more.
march::Problem only_ground(const ground::GridSpec& spec, const std::vector<model::Layer>& layers,
                           const ground::DepthInterval& reach) {
  const model::Ground ground{layers, model::MeanOverBore{0}};
  const auto grid = ground::make_grid(spec, layers, {reach});
  march::Group group;
  group.fraction = ground::active_fraction(grid, reach);
  group.end = grid.nz();
  return {.grid = grid,
          .axial = ground::axial_conductances(grid),
          .groups = {group},
          .coupling = field::Coupling({{0, 0, reach.top, reach.toe - reach.top, 0}}, field::lone_groups(1), grid.r),
          .undisturbed = ground::Undisturbed(ground, grid, 0, 1),
          .pumps = {}};
}

/// Errors of one grid: root of the mean square, weighted by volume, and the largest.
struct Errors {
  double mean = 0, largest = 0;
};

void rows(Claim& claim, const std::string& what, const std::vector<std::string>& grids,
          const std::vector<Errors>& errors, bool coarsest_known) {
  for (std::size_t i = 0; i + 1 < errors.size(); ++i) {
    const std::string at = fmt::format("{}: {} to {}", what, grids[i], grids[i + 1]);
    claim.between(at + ", weighted by volume", 1.8, 2.2, std::log2(errors[i].mean / errors[i + 1].mean));
    const double order = std::log2(errors[i].largest / errors[i + 1].largest);
    if (i == 0 && coarsest_known) {
      claim.known_absolute_miss(at + ", largest", 2, order, 0.2, 0.3,
                                "the coarsest layers grow by 1.3 from each to the next: not yet smooth");
    } else {
      claim.between(at + ", largest", 1.8, 2.2, order);
    }
  }
}

/// One implicit stage of radial conduction, its right-hand side made so that theta = cos(pi x), x =
/// ln(r/r_w)/ln(R/r_w), solves it: no heat through wall or edge.
Errors radial_errors(int rings) {
  const model::Solid solid{2, 2e6};
  const double kappa = 1e6;  // [s]: a metre's diffusion
  const auto problem =
      only_ground({0.075, 10, rings, 1, 1.3, 8, 10}, {{std::numeric_limits<double>::infinity(), "", solid}}, {1, 11});
  const ground::Grid& grid = problem.grid;
  const double wall = grid.r_faces.front(), span = std::log(grid.r_faces.back() / wall);
  const auto exact = [&](double r) { return std::cos(pi * std::log(r / wall) / span); };
  const auto heat = [&](double r) {  // outwards per height, over 2 pi k
    return pi / span * std::sin(pi * std::log(r / wall) / span);
  };
  const auto ring_mean = [&](std::size_t i) {
    constexpr int parts = 400;
    double sum = 0;
    for (int n = 0; n < parts; ++n) {
      const double r = grid.r_faces[i] + (n + 0.5) / parts * (grid.r_faces[i + 1] - grid.r_faces[i]);
      sum += exact(r) * 2 * pi * r * (grid.r_faces[i + 1] - grid.r_faces[i]) / parts;
    }
    return sum / grid.ring_area(i);
  };
  const march::StateLayout layout(problem);
  march::Vector y(layout.size());
  for (std::size_t i = 0; i < grid.nr(); ++i) {
    const double loss = 2 * pi * solid.diffusivity() * (heat(grid.r_faces[i + 1]) - heat(grid.r_faces[i]));
    const double value = ring_mean(i) + kappa * loss / grid.ring_area(i);
    for (std::size_t k = 0; k < grid.nz(); ++k) y[(layout.ground_row() + i) * layout.row() + k] = value;
  }
  const march::RadialFactors radial(problem, kappa);
  radial.eliminate(y.data(), y.data());
  radial.substitute(y.data());
  Errors errors;
  double area = 0;
  for (std::size_t i = 0; i < grid.nr(); ++i) {
    const double miss = y[(layout.ground_row() + i) * layout.row()] - exact(grid.r[i]);
    errors.mean += miss * miss * grid.ring_area(i);
    area += grid.ring_area(i);
    errors.largest = std::max(errors.largest, std::abs(miss));
  }
  errors.mean = std::sqrt(errors.mean / area);
  return errors;
}

/// The axial operator as a matrix, column by column from march::AxialFactors.
Eigen::MatrixXd axial_matrix(const march::Problem& problem) {
  const march::AxialFactors axial(problem);
  const auto n = static_cast<Eigen::Index>(problem.nz());
  Eigen::MatrixXd matrix(n, n);
  const march::StateLayout layout(problem);
  march::Vector y(layout.size()), rate(layout.size());
  const std::size_t at = layout.ground_row() * layout.row();
  for (std::size_t k = 0; k < problem.nz(); ++k) {
    y[at + k] = 1;
    axial.rate(y.data(), rate.data());
    y[at + k] = 0;
    for (std::size_t row = 0; row < problem.nz(); ++row)
      matrix(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(k)) = rate[at + row];
  }
  return matrix;
}

/// Heat flow k theta' = cos(pi z/(2 Z)) through the layers, none through the bottom Z: theta is its integral over k.
Errors axial_errors(const std::vector<model::Layer>& layers, double size) {
  const double bottom = 60;
  const auto problem = only_ground({0.075, 10, 4, size, std::pow(1.3, size), 8 * size, 20}, layers, {5, bottom - 20});
  const ground::Grid& grid = problem.grid;
  const auto flow = [&](double z) { return std::cos(pi * z / (2 * bottom)); };
  const auto exact = [&](double z) {
    double sum = 0, top = 0;
    for (const auto& layer : layers) {
      const double lower = std::min(z, layer.bottom);
      sum += 2 * bottom / pi * (std::sin(pi * lower / (2 * bottom)) - std::sin(pi * top / (2 * bottom))) /
             layer.solid.conductivity;
      if (z <= layer.bottom) break;
      top = layer.bottom;
    }
    return sum;
  };
  Eigen::VectorXd rate(static_cast<Eigen::Index>(grid.nz()));
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    rate[static_cast<Eigen::Index>(k)] =
        (flow(grid.z_faces[k + 1]) - flow(grid.z_faces[k])) / (grid.solid[k].heat_capacity * grid.height(k));
  }
  const Eigen::VectorXd theta = axial_matrix(problem).partialPivLu().solve(rate);
  Errors errors;
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    const double miss = theta[static_cast<Eigen::Index>(k)] - exact(grid.z[k]);
    errors.mean += miss * miss * grid.height(k) / bottom;
    errors.largest = std::max(errors.largest, std::abs(miss));
  }
  errors.mean = std::sqrt(errors.mean);
  return errors;
}

}  // namespace

void manufactured(Check& check) {
  const std::string tolerance = "1.8 to 2.2: finite volumes with conductances in series are of order two";
  auto& radial = check.claim(
      {"manufactured-radial", "the march's radial stage finds a field chosen beforehand, with the square of the rings",
       Origin::computed, "method of manufactured solutions: Roache 1998 (from memory)",
       "theta = cos(pi ln(r/r_w)/ln(R/r_w)) from 0.075 to 10 m, sources as exact means over each ring; (1 - kappa L) "
       "theta = source, kappa 1e6 s, solved by the march's own elimination; theta at the nodes",
       tolerance});
  std::vector<Errors> errors;
  std::vector<std::string> grids;
  for (const int rings : {12, 24, 48, 96}) {
    errors.push_back(radial_errors(rings));
    grids.push_back(fmt::format("{} rings", rings));
  }
  rows(radial, "radius", grids, errors, false);

  auto& axial = check.claim(
      {"manufactured-axial",
       "the march's axial operator finds a field chosen beforehand, with the square of the layers, also through layers "
       "of "
       "other rock",
       Origin::computed, "method of manufactured solutions: Roache 1998 (from memory)",
       "k theta' = cos(pi z/(2 Z)), Z 60 m, sources as exact means over each cell; the operator taken from the march "
       "column by column and inverted; even ground, and k 1, 3 and 1.6 W/(m K) with boundaries at 11 and 33 m",
       tolerance});
  const double endless = std::numeric_limits<double>::infinity();
  const std::vector<model::Layer> even{{endless, "", {2, 2e6}}};
  const std::vector<model::Layer> layered{{11, "", {1, 2.6e6}}, {33, "", {3, 2.1e6}}, {endless, "", {1.6, 2.3e6}}};
  for (const auto* layers : {&even, &layered}) {
    errors.clear();
    grids.clear();
    for (const double size : {1.0, 0.5, 0.25, 0.125}) {
      errors.push_back(axial_errors(*layers, size));
      grids.push_back(fmt::format("{:g} m", size));
    }
    rows(axial, layers == &even ? "even ground" : "three layers", grids, errors, true);
  }
}

}  // namespace stillground::validation
