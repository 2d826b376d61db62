#include "engine/job/warm_warnings.hpp"

#include <string>
#include <vector>

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

constexpr double ice = 273.15;

std::string texts(const std::vector<Warning>& warnings) {
  std::string all;
  for (const Warning& warning : warnings) all += warning.line() + "\n";
  return all;
}

}  // namespace

TEST_CASE("Warm fluid is told of after the run: its data, the pipe's rating, boiling") {
  auto s = test::scenario(1, 1);
  s.fluid = {};
  CHECK(job::warm_warnings(s, ice + 39).empty());
  CHECK_THAT(texts(job::warm_warnings(s, ice + 42)), Contains("a polyethylene pipe bears less pressure when warm"));
  CHECK_THAT(texts(job::warm_warnings(s, ice + 89)), !Contains("boiling"));
  CHECK_THAT(texts(job::warm_warnings(s, ice + 91)),
             Contains("near boiling: from 100 degC on at atmospheric pressure"));
  CHECK_THAT(texts(job::warm_warnings(s, ice + 112)), Contains("its properties are known up to 110.0 degC"));
  s.bore.pipe.conductivity = 50;  // steel
  CHECK(job::warm_warnings(s, ice + 60).empty());
  s.fluid = {model::Antifreeze::methanol, 0.2, model::Fluid::Basis::mass};
  CHECK_THAT(texts(job::warm_warnings(s, ice + 56)), Contains("from 65 degC on"));
}
