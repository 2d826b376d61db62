#include "engine/simulation/duties.hpp"

#include "tests/catch.hpp"

using namespace stillground;

namespace {

const loop::HeatPumps pumps{loop::CopCurve({{273.15, 4}}), loop::CopCurve({{283.15, 6}, {303.15, 4}}),
                            loop::CopCurve({{273.15, 2.5}})};

record::Hour hour_of(const loop::Demand& demand, double eft) {
  record::Hour hour;
  hour.eft = eft;
  hour.power = loop::exchange(demand, pumps, eft).power;
  simulation::enter_duties(hour, demand, pumps);
  return hour;
}

}  // namespace

TEST_CASE("One duty alone takes all of the hour's electricity, at whatever EFT within the hour") {
  record::Hour hour;
  hour.eft = 293.15;
  hour.power = 1234.5;  // not what the mean EFT would give
  simulation::enter_duties(hour, {.heating = 0, .cooling = 6000}, pumps);
  CHECK(hour.power_cooling == 1234.5);
  CHECK(hour.power_hot_water == 0);
}

TEST_CASE("Duties of one hour share its electricity as heat over COP") {
  const record::Hour hour =
      hour_of({.heating = 8000, .cooling = 5000, .cooling_direct = 700, .to_ground = 0, .hot_water = 1000}, 293.15);
  CHECK(hour.power_cooling == Approx(5000.0 / 5));  // half way from 6 to 4
  CHECK(hour.power_hot_water == Approx(1000 / 2.5));
  CHECK(hour.power - hour.power_cooling - hour.power_hot_water == Approx(8000.0 / 4));
  CHECK(hour.heating == 9000);
  CHECK(hour.cooling == 5700);
  CHECK(hour.cooling_direct == 700);
  CHECK(hour.hot_water == 1000);
}

TEST_CASE("Direct cooling takes no electricity of the heat pumps") {
  const record::Hour hour = hour_of({.heating = 0, .cooling = 0, .cooling_direct = 900}, 285.15);
  CHECK(hour.power == 0);
  CHECK(hour.power_cooling == 0);
  CHECK(hour.cooling == 900);
}
