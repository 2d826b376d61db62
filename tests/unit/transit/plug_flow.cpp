#include <algorithm>
#include <cmath>

#include "engine/transit/hour_march.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/restart_case.hpp"

using namespace stillground;

TEST_CASE("Minutes after standing are those of plug flow within 0.3 K", "[transit]") {
  for (const validation::RestartCase& one : validation::restart_cases()) {
    INFO(one.name);
    const auto minutes = validation::march_restarts(one);
    REQUIRE(minutes.ours.size() == minutes.reference.size());
    double worst = 0;
    for (std::size_t i = 0; i < minutes.ours.size(); ++i) {
      REQUIRE(std::isfinite(minutes.reference[i]));
      worst = std::max(worst, std::abs(minutes.ours[i] - minutes.reference[i]));
    }
    CHECK(worst <= 0.3);
  }
}
