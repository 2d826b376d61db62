#include "tools/points/decide.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground;
using stillground::testing::Scratch;

namespace {

model::Scenario small() {
  auto s = test::scenario(2, 3, 2);
  s.bore.depth = 60;
  s.loads = test::building(2500.0 * 6);
  s.limits = {{"eft_min", model::Limit::Quantity::eft, model::Limit::Side::least, model::Limit::Over::hour, 273.15}};
  return s;
}

}  // namespace

TEST_CASE("What a screening decides in memory is what its written result decides") {
  const Scratch scratch;
  const job::Screened screened = job::screened(small());
  job::write_result(screened, scratch.folder / "a.h5");
  const results::Decision in_memory = points::decision_of(screened);
  const results::Decision written = results::decision_of(record::read::Result(scratch.folder / "a.h5"));
  CHECK(in_memory.method == "screening");
  CHECK(in_memory.eft_min == Approx(written.eft_min).margin(1e-9));
  CHECK(in_memory.margin == Approx(written.margin).margin(1e-9));
  CHECK(in_memory.own_error.hour == Approx(written.own_error.hour));
  CHECK(in_memory.own_error.hour > 0);
  CHECK(in_memory.power == Approx(written.power));
  CHECK(in_memory.warnings == written.warnings);
  CHECK(in_memory.length == Approx(written.length));
  CHECK(std::isnan(in_memory.drift));
}

TEST_CASE(
    "March and screening of one scenario decide alike within the screening's own error, and the march tells a drift") {
  const Scratch scratch;
  job::Options options;
  options.result = scratch.folder / "a.h5";
  const results::Decision marched = points::march(small(), options);
  const results::Decision screened = points::screen(small());
  CHECK(marched.method == "march");
  CHECK(std::abs(marched.margin - screened.margin) <= screened.own_error.hour);
  CHECK(marched.margin != screened.margin);
  CHECK(std::isfinite(marched.drift));
  CHECK(results::is_sure(marched));
}
