#include "tools/points/amounts.hpp"

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

TEST_CASE("The shortest trench of a grid is one spacing a bore, but for the first") {
  const points::Amounts amounts = points::amounts_of(test::scenario(2, 3));
  CHECK(amounts.bores == 6);
  CHECK(amounts.trench == Approx(5 * 6));
  CHECK(points::amounts_of(test::scenario(1, 1)).trench == 0);
}

TEST_CASE("Grout fills what the legs leave of the bore, and each leg is as long as the bore") {
  const points::Amounts amounts = points::amounts_of(test::scenario(2, 3));
  const double active = 6 * 90, pi = 3.14159265358979;
  CHECK(amounts.pipe == Approx(2 * active));
  CHECK(amounts.grout == Approx(active * pi / 4 * (0.15 * 0.15 - 2 * 0.0422 * 0.0422)));
}
