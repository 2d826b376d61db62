#include "tools/results/decision.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tests/unit/results/made_hours.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::made_hours;

namespace {

record::Header header(const std::vector<record::LimitRow>& limits) {
  record::Header header;
  header.start = {2027, 1, 1};
  header.years = 2;
  header.limits = limits;
  header.has_heat_pump = true;
  header.drill_length = 240;
  return header;
}

const record::LimitRow least{"eft_min", "eft", true, "hour", 273.15 - 1};
const record::LimitRow most{"eft_max", "eft", false, "month", 273.15 + 20};

/// 5 degC, but -1.5 degC in one hour of the second year.
std::vector<record::Hour> hours() {
  auto hours = made_hours(2 * 8760, [](std::size_t h) { return h == 10000 ? -1.5 : 5.0; });
  for (record::Hour& hour : hours) {
    hour.heating = 4000;
    hour.power = 1000;
  }
  return hours;
}

Decision with_error(double hour, double month) {
  record::Header screened = header({least, most});
  screened.method = "screening";
  screened.screening_error = {month, hour};
  return decision_of(screened, hours());
}

}  // namespace

TEST_CASE("A decision tells extremes, the nearest limit, the first year beyond, electricity and performance") {
  const Decision decision = decision_of(header({least, most}), hours());
  CHECK(decision.eft_min == Approx(273.15 - 1.5));
  CHECK(decision.eft_max == Approx(273.15 + 5));
  CHECK(decision.margin == Approx(-0.5));
  CHECK(decision.limit == "eft_min");
  CHECK(decision.first_year_beyond == 2);
  CHECK(decision.hours_beyond == 1);
  CHECK(decision.length == 240);
  CHECK(decision.power == Approx(1000.0 * 8760 * 3600));
  CHECK(decision.performance == Approx(4));
  CHECK_FALSE(kept(decision));
  CHECK(is_sure(decision));
}

TEST_CASE("Without limits all are kept, and nothing is beyond") {
  const Decision decision = decision_of(header({}), hours());
  CHECK(kept(decision));
  CHECK(is_sure(decision));
  CHECK(std::isnan(decision.margin));
  CHECK_FALSE(decision.hours_beyond);
}

TEST_CASE("A screening is sure only where its own error does not reach the limit, by what that one judges") {
  CHECK(is_sure(with_error(0.4, 0.1)));
  CHECK_FALSE(is_sure(with_error(0.6, 0.1)));
  CHECK(is_sure(with_error(0.4, 16)));  // a monthly mean within its error of its limit cannot mend the broken one
  record::Header monthly = header({most});
  monthly.screening_error = {16, 0.1};
  CHECK_FALSE(is_sure(decision_of(monthly, hours())));
}
