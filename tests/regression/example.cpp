#include <algorithm>
#include <limits>

#include "engine/config/read.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

// Our own figures, pinned: they change only with a reason in the commit, and then the README's change with them.
// 0.005 K: the last digit that the README shows.
TEST_CASE("The example's first year is what the README shows") {
  struct Figures {
    const char* file;
    double least, most;  // [degC]
  };
  for (const auto& [file, least, most] :
       {Figures{"spacing_5m.yaml", 2.76, 21.01}, Figures{"spacing_7m.yaml", 2.94, 20.86}}) {
    auto scenario = config::read_scenario(std::string(PROJECT_FOLDER "/examples/juniper_row/") + file);
    double coldest = std::numeric_limits<double>::infinity(), warmest = -coldest;
    for (const auto& hour : test::march(scenario, hours_per_year)) {
      if (hour.flow <= 0) continue;
      coldest = std::min(coldest, hour.eft - 273.15);
      warmest = std::max(warmest, hour.eft - 273.15);
    }
    CHECK(coldest == Approx(least).margin(0.005));
    CHECK(warmest == Approx(most).margin(0.005));
  }
}
