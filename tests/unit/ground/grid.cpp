#include "engine/ground/grid.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

const std::vector<model::Layer> layers{
    {9, "clay", {1.3, 2.6e6}}, {55.3, "sandstone", {2.3, 2.1e6}}, {endless, "limestone", {2.7, 2.2e6}}};

bool has_face(const ground::Grid& grid, double z) {
  return std::any_of(grid.z_faces.begin(), grid.z_faces.end(), [&](double face) { return std::abs(face - z) < 1e-9; });
}

ground::Grid grid(const std::vector<ground::DepthInterval>& bores = {{1.8, 121.8}}) {
  return ground::make_grid({0.075, 320, 36, 1, 1.3, 8, 180}, layers, bores);
}

}  // namespace

TEST_CASE("The grid has a face at every layer boundary, bore top and toe, and at the bottom") {
  const auto g = grid();
  for (const double z : {0.0, 1.8, 9.0, 55.3, 121.8, 301.8}) CHECK(has_face(g, z));
  CHECK(std::is_sorted(g.z_faces.begin(), g.z_faces.end()));
}

TEST_CASE("No cell spans two layers of the log") {
  const auto g = grid();
  for (std::size_t k = 0; k < g.nz(); ++k) {
    const double expected = g.z[k] < 9 ? 1.3 : g.z[k] < 55.3 ? 2.3 : 2.7;
    CHECK(g.solid[k].conductivity == expected);
  }
}

TEST_CASE("Cells are about as fine as asked at the bore's ends and neighbours' heights stay within the growth") {
  const auto g = grid();
  for (std::size_t k = 0; k < g.nz(); ++k) {
    if (std::abs(g.z_faces[k] - 121.8) < 1e-9) CHECK(g.height(k) < 1.5);
    if (std::abs(g.z_faces[k] - 121.8) < 1e-9) CHECK(g.height(k - 1) < 1.5);
    CHECK(g.height(k) < 60);
  }
}

TEST_CASE("Where unlike layers meet along a bore cells are small, the smaller the more they are unlike") {
  const auto beside = [](double below) {
    const std::vector<model::Layer> two{{60, "", {2.0, 2e6}}, {endless, "", {below, 2e6}}};
    const auto g = ground::make_grid({0.075, 300, 36, 0.5, 1.2, 8, 60}, two, {{2, 122}});
    const auto face =
        std::find_if(g.z_faces.begin(), g.z_faces.end(), [](double z) { return std::abs(z - 60) < 1e-9; });
    const auto k = static_cast<std::size_t>(face - g.z_faces.begin());
    return std::max(g.height(k - 1), g.height(k));
  };
  const double alike = beside(2.0);
  CHECK(alike > 6);        // as between bore ends 60 m off
  CHECK(beside(2.2) > 2);  // a twentieth of their sum apart
  CHECK(beside(2.2) < alike);
  CHECK(beside(4.0) < 0.85);  // a third of it: 0.6 m, and half a cell's growth
  CHECK(beside(40.0) > 0.2);  // never below half of an end's cell
}

TEST_CASE("A boundary between equal layers, or one below the bores, changes no cell") {
  const auto heights_to = [](const std::vector<model::Layer>& log) {
    const auto g = ground::make_grid({0.075, 300, 36, 0.5, 1.2, 8, 60}, log, {{2, 122}});
    std::vector<double> faces;
    for (const double z : g.z_faces) {
      if (z <= 122) faces.push_back(z);
    }
    return faces;
  };
  const auto one = heights_to({{endless, "", {2.0, 2e6}}});
  CHECK(heights_to({{122, "", {2.0, 2e6}}, {endless, "", {2.0, 2e6}}}) == one);
  CHECK(heights_to({{130, "", {2.0, 2e6}}, {endless, "", {4.0, 2e6}}}) == one);
}

TEST_CASE("Rings fill the disc between bore wall and outer radius") {
  const auto g = grid();
  double area = 0;
  for (std::size_t i = 0; i < g.nr(); ++i) area += g.ring_area(i);
  CHECK(area == Approx(std::numbers::pi * (320.0 * 320 - 0.075 * 0.075)).epsilon(1e-12));
}

TEST_CASE("Fractions keep every bore's exact length, also where bores share a face") {
  const std::vector<ground::DepthInterval> bores{{1.8, 121.8}, {1.9, 121.95}, {2.5, 90}, {1.8, 121.8}};
  const auto g = grid(bores);
  for (const auto& bore : bores) {
    const auto fraction = ground::active_fraction(g, bore);
    double length = 0;
    for (std::size_t k = 0; k < g.nz(); ++k) length += fraction[k] * g.height(k);
    CHECK(length == Approx(bore.toe - bore.top).epsilon(1e-12));
  }
}

// Gershgorin's circle theorem; a uniform grid's largest eigenvalue tends to 4 alpha/dz^2.
TEST_CASE("The stiffest axial rate of equal cells is four diffusivities over the height squared") {
  const std::vector<model::Layer> one{{endless, "", {2.0, 2e6}}};
  const auto g = ground::make_grid({0.075, 300, 36, 0.5, 1.0001, 0.5, 1}, one, {{1, 21}});
  const double h = g.height(10);
  CHECK(ground::stiffest_axial_rate(g) >= 4e-6 / (h * h) * 0.99);
  CHECK(ground::stiffest_axial_rate(g) <= 4e-6 / (h * h) * 1.6);  // the surface cell has half the distance above it
}
