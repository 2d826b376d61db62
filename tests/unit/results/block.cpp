#include "tools/results/block.hpp"

#include <cmath>
#include <functional>
#include <numeric>

#include "engine/field/superposition.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::results;

namespace {

/// Bores that each are a group of their own, on radial nodes from 0.08 m to 300 m and one layer.
record::Header header_of(const std::vector<PlanPoint>& places) {
  record::Header header;
  for (int i = 0; i < 36; ++i) header.r.push_back(0.08 * std::pow(300 / 0.08, i / 35.0));
  for (const PlanPoint& place : places) {
    header.bores.push_back({place.x, place.y, 1, 100, 0.075, 0, header.groups});
    ++header.groups;
  }
  return header;
}

std::vector<PlanPoint> rectangle(int rows, int columns, double spacing) {
  std::vector<PlanPoint> places;
  for (int i = 0; i < rows; ++i) {
    for (int j = 0; j < columns; ++j) places.push_back({j * spacing, i * spacing});
  }
  return places;
}

/// [group][r] of a function of the distance, the same for all groups.
std::vector<float> rise_of(const record::Header& header, const std::function<double(double)>& rise) {
  std::vector<float> values;
  for (int g = 0; g < header.groups; ++g) {
    for (const double r : header.r) values.push_back(static_cast<float>(rise(r)));
  }
  return values;
}

const std::vector<double> one_layer = {1};

double block_mean(const record::Header& header, const std::function<double(double)>& rise) {
  return weighted_mean(rise_of(header, rise), block_weights(ground_block(header.bores), header), one_layer);
}

/// Whether a point is within the margin of the rectangle [0, width] x [0, height].
bool inside(const PlanPoint& p, double width, double height, double margin) {
  return std::hypot(std::max({0.0, -p.x, p.x - width}), std::max({0.0, -p.y, p.y - height})) <= margin;
}

}  // namespace

// The sum of weights is the number of bores: each bore's weights are those of a mean.
TEST_CASE("A rise that is the same everywhere is its own mean, once for each bore") {
  for (const auto& places : {rectangle(1, 1, 6), rectangle(1, 2, 6), rectangle(1, 40, 6), rectangle(6, 5, 7)}) {
    const record::Header header = header_of(places);
    // Quadrature to 1e-6, as block_weights promises; 0.5 is exact in 32 bits.
    CHECK(block_mean(header, [](double) { return 0.5; }) ==
          Approx(0.5 * static_cast<double>(places.size())).epsilon(1e-6));
  }
}

// Mean of ln r over a disc of radius R: ln R - 1/2; within the first node r0 the rise is held, which adds (r0/R)^2/2.
TEST_CASE("A lone bore's logarithm has the mean of the disc's closed form") {
  const record::Header header = header_of({{0, 0}});
  const double exact = std::log(3.0) - 0.5 + 0.5 * std::pow(0.08 / 3.0, 2);
  // ln r is linear in the interpolation's own variable; what is left is 32-bit storage of values up to 6.
  CHECK(block_mean(header, [](double r) { return std::log(r); }) == Approx(exact).margin(2e-6));
}

TEST_CASE("The block's mean of a field agrees with a fine mesh of points") {
  const record::Header header = header_of(rectangle(3, 2, 5));
  const auto rise = [](double r) { return 3 / (1 + r * r / 20) - 0.1 * std::log(r); };
  const std::vector<float> values = rise_of(header, rise);
  constexpr double mesh = 0.05;
  double sum = 0;
  double points = 0;
  for (double x = -2.5 + mesh / 2; x < 7.5; x += mesh) {
    for (double y = -2.5 + mesh / 2; y < 12.5; y += mesh) {
      if (!inside({x, y}, 5, 10, 2.5)) continue;
      points += 1;
      for (std::size_t b = 0; b < header.bores.size(); ++b) {
        const double distance = std::hypot(x - header.bores[b].x, y - header.bores[b].y);
        for (const auto& w : field::radial_weights(header.r, distance)) {
          sum += w.weight * static_cast<double>(values[b * header.r.size() + w.cell]);
        }
      }
    }
  }
  // The mesh's own error: its ragged edge, about (mesh / margin)^1.5 of the edge's share of the rise.
  CHECK(block_mean(header, rise) == Approx(sum / points).epsilon(2e-4));
}

TEST_CASE("Members of one group count once each") {
  record::Header header = header_of(rectangle(2, 2, 6));
  const double apart = block_mean(header, [](double r) { return std::exp(-r / 4); });
  for (record::BoreRow& bore : header.bores) bore.group = 0;
  header.groups = 1;
  CHECK(block_mean(header, [](double r) { return std::exp(-r / 4); }) == Approx(apart).epsilon(1e-12));
}

TEST_CASE("Half way between two bores the rise is twice that at half their distance") {
  const record::Header header = header_of({{0, 0}, {6, 0}});
  const PlanWeights weights = point_weights(mid_points(header.bores), header);
  // ln r is interpolated exactly; values near 1 in 32 bits.
  CHECK(weighted_mean(rise_of(header, [](double r) { return std::log(r); }), weights, one_layer) ==
        Approx(2 * std::log(3.0)).margin(1e-6));
}

TEST_CASE("Layers count by the part of them that the bores pass") {
  const std::vector<double> faces = {0, 2, 4, 10, 20};
  const std::vector<double> weights = layer_weights(faces, 3, 11);
  CHECK(weights[0] == 0);
  CHECK(weights[1] == Approx(1 / 8.0));
  CHECK(weights[2] == Approx(6 / 8.0));
  CHECK(weights[3] == Approx(1 / 8.0));
}

TEST_CASE("A mean over layers takes each at its weight") {
  const PlanWeights plan{1, 2, {0.25, 0.75}};
  const std::vector<float> rise = {4, 8, 10, 2};  // [layer][cell]
  const std::vector<double> layers = {0.5, 0.5};
  CHECK(weighted_mean(rise, plan, layers) == Approx(0.5 * (1 + 6) + 0.5 * (2.5 + 1.5)));
}
