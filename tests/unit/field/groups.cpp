#include "engine/field/groups.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "engine/field/coupling.hpp"
#include "engine/field/layout.hpp"

using namespace stillground;

namespace {

std::vector<model::BoreSite> grid(int rows, int columns) {
  return field::sites(model::Grid{rows, columns, 6.0}, 1.5, 100);
}

}  // namespace

// A rectangle m x n has ceil(m/2) ceil(n/2) kinds of bore, a square of even side k(k+1)/2 with k = m/2: counting orbits
// of the rectangle's and the square's symmetries (elementary group theory).
TEST_CASE("Bores that the layout's symmetry makes equal share a group") {
  CHECK(field::equal_groups(grid(1, 1)).size() == 1);
  CHECK(field::equal_groups(grid(6, 5)).size() == 9);
  CHECK(field::equal_groups(grid(10, 10)).size() == 15);
  CHECK(field::equal_groups(grid(3, 3)).size() == 3);
  CHECK(field::equal_groups(grid(2, 1)).size() == 1);
}

TEST_CASE("A ring of bores is one group") {
  std::vector<model::BoreSite> ring;
  for (int i = 0; i < 7; ++i) {
    const double angle = 2 * std::acos(-1.0) * i / 7;
    ring.push_back({20 * std::cos(angle), 20 * std::sin(angle), 1, 80, 0});
  }
  CHECK(field::equal_groups(ring).size() == 1);
}

TEST_CASE("A deeper bore splits the group that it stood in, and those that see it differently") {
  auto bores = grid(2, 2);
  bores[0].depth = 120;
  const auto groups = field::equal_groups(bores);
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
  CHECK(field::equal_groups(bores).of_bore == field::equal_groups(grid(4, 3)).of_bore);
}

TEST_CASE("Coupling weights of a group add up to the number of its neighbours") {
  std::vector<double> r(36);
  for (std::size_t i = 0; i < r.size(); ++i) r[i] = 0.08 * std::pow(1.26, static_cast<double>(i));
  const auto bores = grid(6, 5);
  const auto groups = field::equal_groups(bores);
  const field::Coupling coupling(bores, groups, r);
  for (std::size_t a = 0; a < groups.size(); ++a) {
    double sum = 0;
    for (const auto& term : coupling.terms(a)) sum += term.weight;
    CHECK(sum == Approx(29).epsilon(1e-12));  // interpolation weights sum to one for each neighbour
  }
}
