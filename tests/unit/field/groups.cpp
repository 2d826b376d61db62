#include "engine/field/groups.hpp"

#include <cmath>
#include <numeric>

#include "engine/field/coupling.hpp"
#include "engine/field/layout.hpp"
#include "tests/catch.hpp"

using namespace stillground;

namespace {

std::vector<model::BoreSite> grid(int rows, int columns) {
  return field::sites(model::Grid{rows, columns, 6.0}, 1.5, 100);
}

field::Groups grouped(const std::vector<model::BoreSite>& bores, int in_series = 1) {
  return field::equal_groups(bores, field::in_series(bores.size(), in_series));
}

}  // namespace

// A rectangle m x n has ceil(m/2) ceil(n/2) kinds of bore, a square of even side k(k+1)/2 with k = m/2: counting orbits
// of the rectangle's and the square's symmetries (elementary group theory).
TEST_CASE("Bores that the layout's symmetry makes equal share a group") {
  CHECK(grouped(grid(1, 1)).size() == 1);
  CHECK(grouped(grid(6, 5)).size() == 9);
  CHECK(grouped(grid(10, 10)).size() == 15);
  CHECK(grouped(grid(3, 3)).size() == 3);
  CHECK(grouped(grid(2, 1)).size() == 1);
}

TEST_CASE("A ring of bores is one group") {
  std::vector<model::BoreSite> ring;
  for (int i = 0; i < 7; ++i) {
    const double angle = 2 * std::acos(-1.0) * i / 7;
    ring.push_back({20 * std::cos(angle), 20 * std::sin(angle), 1, 80, 0});
  }
  CHECK(grouped(ring).size() == 1);
}

TEST_CASE("A deeper bore splits the group that it stood in, and those that see it differently") {
  auto bores = grid(2, 2);
  bores[0].depth = 120;
  const auto groups = grouped(bores);
  CHECK(groups.size() == 3);  // the deep one, its two neighbours, the one across
  CHECK(groups.of_bore[1] == groups.of_bore[2]);
}

TEST_CASE("Grouping does not depend on where the plan's origin lies or how it is turned") {
  auto bores = grid(4, 3);
  for (auto& bore : bores) {
    const double x = bore.x, y = bore.y;
    bore.x = 1234.5 + 0.8 * x - 0.6 * y;
    bore.y = -77.0 + 0.6 * x + 0.8 * y;
  }
  CHECK(grouped(bores).of_bore == grouped(grid(4, 3)).of_bore);
}

TEST_CASE("Coupling weights of a group add up to the number of its neighbours") {
  std::vector<double> r(36);
  for (std::size_t i = 0; i < r.size(); ++i) r[i] = 0.08 * std::pow(1.26, static_cast<double>(i));
  const auto bores = grid(6, 5);
  const auto groups = grouped(bores);
  const field::Coupling coupling(bores, groups, r);
  for (std::size_t a = 0; a < groups.size(); ++a) {
    double sum = 0;
    for (const auto& term : coupling.terms(a)) sum += term.weight;
    CHECK(sum == Approx(29).epsilon(1e-12));  // interpolation weights sum to one for each neighbour
  }
}

TEST_CASE("Bores in series are told apart by their place on the circuit") {
  // Four bores on a square, two circuits of two: first ones and second ones.
  const auto groups = grouped(grid(2, 2), 2);
  CHECK(groups.size() == 2);
  CHECK(groups.of_bore == std::vector<std::size_t>{0, 1, 0, 1});
  // The whole square in series: every bore has a place of its own.
  CHECK(grouped(grid(2, 2), 4).size() == 4);
}

TEST_CASE("Bores that are shut off earlier, or carry more flow, have groups of their own") {
  auto bores = grid(2, 2);
  bores[0].stop = 1e8;
  CHECK(grouped(bores).size() == 3);
  bores = grid(1, 2);
  bores[1].flow_weight = 2;
  CHECK(grouped(bores).size() == 2);
}
