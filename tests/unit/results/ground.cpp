#include "tools/results/ground.hpp"

#include <cmath>
#include <numbers>

#include "engine/base/errors.hpp"
#include "tests/catch.hpp"
#include "tests/unit/results/made_result.hpp"
#include "tools/results/boundary.hpp"
#include "tools/results/lengths.hpp"
#include "tools/results/slice.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::Contains;
using stillground::testing::made_result;

namespace {

constexpr double diffusivity = 1e-6, conductivity = 2, heat = 50;  // m2/s, W/(m K), W/m
constexpr double five_years = 5 * 31536000.0;

/// Rise [K] at r, z from a finite line between D and D + H that has given off `heat` for `time`, the surface held: the
/// kernel erfc(R / sqrt(4 a t)) / R and its mirror image integrated along the line (Eskilson 1987; Claesson & Javed
/// 2011), by Simpson's rule. Nothing of the engine.
double line_rise(double r, double z, double D, double H, double time) {
  constexpr int pieces = 4000;
  const double far = std::sqrt(4 * diffusivity * time);
  const auto kernel = [&](double h) {
    const double near = std::hypot(r, z - h), mirror = std::hypot(r, z + h);
    return std::erfc(near / far) / near - std::erfc(mirror / far) / mirror;
  };
  double sum = kernel(D) + kernel(D + H);
  for (int i = 1; i < pieces; ++i) sum += (i % 2 == 1 ? 4 : 2) * kernel(D + H * i / pieces);
  return heat / (4 * std::numbers::pi * conductivity) * sum * H / pieces / 3;
}

/// Three bores of two kinds: 100 m from 2 m on, 60 m from 4 m on.
record::Header line_header() {
  record::Header header;
  for (int k = 0; k <= 80; ++k) header.z_faces.push_back(2.0 * k);
  for (int k = 0; k < 80; ++k) header.z.push_back(2.0 * k + 1);
  for (int i = 0; i < 40; ++i) header.r.push_back(0.08 * std::pow(1.26, i));
  header.bores = {{0, 0, 2, 100, 0.075, 0, 0}, {7, 0, 4, 60, 0.075, 0, 1}, {3, 5, 2, 100, 0.075, 0, 0}};
  header.groups = 2;
  header.years = 5;
  return header;
}

double depth_of(std::size_t group) {
  return group == 0 ? 100 : 60;
}
double top_of(std::size_t group) {
  return group == 0 ? 2 : 4;
}

/// The two kinds' own rises at the grid's nodes, as lines give them.
GroundState line_state(const record::Header& header) {
  GroundState state{five_years, {}, std::vector<double>(header.z.size(), 285)};
  for (const std::size_t group : {0U, 1U}) {
    for (const double z : header.z) {
      for (const double r : header.r) {
        state.rise.push_back(line_rise(r, z, top_of(group), depth_of(group), five_years));
      }
    }
  }
  return state;
}

double superposed(const record::Header& header, const PlanPoint& at, double z) {
  double sum = 0;
  for (const record::BoreRow& bore : header.bores) {
    sum += line_rise(std::hypot(at.x - bore.x, at.y - bore.y), z, bore.top, bore.depth, five_years);
  }
  return sum;
}

}  // namespace

// tests/reference/finite_line_points.csv: g = 2 pi k rise/q' at r 0.075 m, z 50 m, D 2 m, H 100 m, 5 years.
TEST_CASE("The test's own line source is that of the reference table") {
  CHECK(line_rise(0.075, 50, 2, 100, five_years) ==
        Approx(5.524431917529 * heat / (2 * std::numbers::pi * conductivity)).epsilon(1e-4));
}

// Rings fall short of point values by h^2/24 of a curvature that the reader makes good for marched rings; point values
// are read high by it: 0.01 in g, 0.04 K of 50 W/m.
TEST_CASE("The ground between bores of unequal depth is what superposed line sources make of it") {
  const record::Header header = line_header();
  const GroundState state = line_state(header);
  const std::vector<PlanPoint> places = {{3.5, 0}, {-2, 1}, {5, 3}, {12, -6}, {3, 1.7}};
  for (const double depth : {11.0, 31.0, 51.0, 75.0, 95.0}) {  // centres of layers
    const std::vector<double> level = rise_at_depth(header, state, depth);
    for (const PlanPoint& place : places) {
      CAPTURE(depth, place.x, place.y);
      const double exact = superposed(header, place, depth);
      CHECK(exact > 0.2);
      CHECK(rise_at(place_weights(header, place), level) ==
            Approx(exact).margin(0.01 * heat / (2 * std::numbers::pi * conductivity)));
    }
  }
}

// Straight between centres 2 m apart falls short of a bent profile by h^2/8 of its curvature: 0.3 % at 10 m, less
// below.
TEST_CASE("Half way between two layers' centres the ground is read within a 200th") {
  const record::Header header = line_header();
  const GroundState state = line_state(header);
  for (const double depth : {10.0, 30.0, 50.0}) {
    const std::vector<double> level = rise_at_depth(header, state, depth);
    for (const PlanPoint& place : {PlanPoint{3.5, 0}, {5, 3}, {3, 1.7}}) {
      CHECK(rise_at(place_weights(header, place), level) == Approx(superposed(header, place, depth)).epsilon(0.005));
    }
  }
}

TEST_CASE("A level and an upright cut read the same ground") {
  const record::Header header = line_header();
  const GroundState state = line_state(header);
  Slice upright = empty_slice(header, {.depth = {}, .from = {-4, 1}, .to = {11, 1}}, 31);
  upright = slice_of(header, state, upright);
  for (const std::size_t j : {4U, 12U, 20U}) {
    const std::vector<double> level = rise_at_depth(header, state, upright.depth(j));
    for (const std::size_t i : {0U, 9U, 20U}) {
      const double there = rise_at(place_weights(header, upright.place(i, j)), level);
      CHECK(upright.rise[j * upright.x.size() + i] == Approx(there).epsilon(1e-12));
    }
  }
  CHECK(upright.rise[5] == 0);  // at the surface
}

TEST_CASE("A level cut holds all bores and the whole plot, with square meshes") {
  record::Header header = line_header();
  header.land = {{-50, -20}, {30, -20}, {30, 25}};
  const Slice slice = empty_slice(header, {.depth = 50, .from = {}, .to = {}});
  CHECK(slice.x.front() <= -50);
  CHECK(slice.y.back() >= 25);
  CHECK(slice.x[1] - slice.x[0] == Approx(slice.y[1] - slice.y[0]).epsilon(0.02));
}

TEST_CASE("A rise vanishes at the surface, the undisturbed column is carried on to it") {
  const std::vector<double> z = {1, 3, 7};
  const DepthWeights rise = rise_weights(z, 0.5), column = column_weights(z, 0);
  CHECK(rise.weight[0] == Approx(0.5));
  CHECK(column.weight[0] == Approx(1.5));
  CHECK(column.weight[1] == Approx(-0.5));
  CHECK(rise_weights(z, 6).weight[1] == Approx(0.75));
}

TEST_CASE("Between two instants that the run kept the ground is read straight") {
  const auto result = made_result({1, "monthly", [](double t) { return 12 * t; }, 0, {}});
  const double july = 31 * seconds_per_day;
  CHECK(ground_at(result, july).rise[5] == Approx(12 * 31.0 / 365).epsilon(1e-6));
  CHECK(ground_at(result, july / 2).rise[5] == Approx(12 * 15.5 / 365).epsilon(1e-6));
  CHECK_THROWS_WITH(ground_at(result, 1.001 * seconds_per_year),
                    Contains("is outside the run, 2027-07-01 00:00 to 2028-07-01"));
}

TEST_CASE("A run without fields has no ground to cut") {
  const auto result = made_result({1, "none", [](double) { return 0.0; }, 0, {}});
  CHECK_THROWS_WITH(ground_at(result, 0), Contains("fields: none"));
}

TEST_CASE("The highest change along a line is found with its date, warming or cooling") {
  const auto result = made_result({2, "monthly", [](double t) { return t < 1.5 ? -t : 0.2; }, 0, {}});
  const Boundary boundary = boundary_of(result, boundary_line(result.header()), {});
  CHECK(boundary.highest.rise ==
        Approx(-2 * (365 + 153) / 365.0).epsilon(1e-6));  // two bores; the last instant before 1.5 years
  CHECK(boundary.highest.time == Approx((365 + 153) * seconds_per_day));
  CHECK(boundary.most_warmed[1].rise == Approx(0.4).epsilon(1e-6));
  CHECK(boundary.most_warmed[0].rise == 0);
}

TEST_CASE("Without a plot the line is the bores' hull, widened; with one it is the plot's outline") {
  record::Header header = line_header();
  for (const PlanPoint& corner : boundary_line(header).corners) {
    CHECK(std::hypot(corner.x - 3.5, corner.y - 2) < 8);
  }
  header.land = {{-50, -20}, {30, -20}, {30, 25}};
  CHECK(boundary_line(header).corners.size() == 3);
  CHECK(boundary_line(header).what == "the plot's outline");
}

TEST_CASE("Lengths of a command line are metres or bring their unit") {
  CHECK(read_length("60", "--depth") == 60);
  CHECK(read_length(" 100 ft", "--depth") == Approx(30.48));
  CHECK(read_length("-2.5", "--depth") == -2.5);
  CHECK_THROWS_WITH(read_length("deep", "--depth"), Contains("--depth"));
  CHECK_THROWS_AS(read_length("", "--depth"), InputError);
  CHECK_THROWS_AS(read_length("12 W", "--depth"), InputError);
  const auto [from, to] = read_section("-10,2.5,35 m,2.5", "--section");
  CHECK(from.x == -10);
  CHECK(to.x == 35);
  CHECK_THROWS_WITH(read_section("1,2,3", "--section"), Contains("is not x0,y0,x1,y1"));
  CHECK(read_places("0,0; 40,0; 40,30 m", "--outline").size() == 3);
  CHECK_THROWS_WITH(read_places("0,0,4; 1,1", "--outline"), Contains("is not a place"));
}
