#include "engine/materials/rating.hpp"

#include <string_view>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

constexpr double psi = 6894.757293168;

double rating(std::string_view name, double ratio) {
  for (const auto& strength : materials::pipe_strengths) {
    if (strength.name == name) return materials::pressure_rating(strength, ratio);
  }
  FAIL("no such material");
  return 0;
}

}  // namespace

// Plastics Pipe Institute, Sample comparison between PE 4710 and PE 3608, July 2015, DR-11: 200 and 160 psi.
TEST_CASE("DR-11 pipe is rated as the pipe trade's comparison of 2015 has it") {
  CHECK(rating("PE4710", 11) / psi == Approx(200).epsilon(1e-12));
  CHECK(rating("PE3608", 11) / psi == Approx(160).epsilon(1e-12));
}

// EN 12201 (from memory): SDR 9, 11, 17 of PE100 are PN 20, 16, 10.
TEST_CASE("PE100 is rated at its nominal pressures") {
  CHECK(rating("PE100", 9) / 1e5 == Approx(20));
  CHECK(rating("PE100", 11) / 1e5 == Approx(16));
  CHECK(rating("PE100", 17) / 1e5 == Approx(10));
}

TEST_CASE("A pipe is rated by the standard ratio that its wall is sold as, never by a better one") {
  CHECK(materials::dimension_ratio(42.16, 3.833) == 11);
  CHECK(materials::dimension_ratio(32.0, 3.0) == 11);
  CHECK(materials::dimension_ratio(63.0, 5.8) == 11);
  CHECK(materials::dimension_ratio(32.0, 2.8) == 13.5);  // thinner than ratio 11 asks for
  CHECK(materials::dimension_ratio(40.0, 8.0) == Approx(5));
  CHECK(materials::dimension_ratio(100.0, 2.0) == Approx(50));
}
