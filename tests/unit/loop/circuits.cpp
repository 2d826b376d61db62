#include "engine/loop/circuits.hpp"

#include <array>
#include <random>
#include <vector>
#include "tests/catch.hpp"

#include "engine/loop/closure.hpp"

using namespace stillground;
using loop::Circuits;
using loop::Link;

namespace {

// Round-off of a few sums of temperatures near 300 K.
constexpr double round_off = 1e-12 * 300;

/// A field with what each of its links does to its inlet.
struct Field {
  std::vector<Link> links;
  std::vector<double> gain, offset, flow;  // flow: of one member [W/K]
  Circuits circuits{links};

  loop::FieldOutlet outlet() {
    circuits.set_gains(gain, flow);
    return circuits.set_offsets(offset);
  }

  double outlet_of(std::size_t g, double inlet) const { return gain[g] * inlet + offset[g]; }
};

/// Three circuits of two groups each, one after the other, and a group by itself, with flows of their own.
Field seven_groups() {
  std::mt19937 random(5);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Field field{{{Link::none, false, 3},
               {Link::none, false, 2},
               {0, true, 3},
               {Link::none, true, 4},
               {1, true, 2},
               {Link::none, false, 1},
               {5, true, 1}},
              {},
              {},
              {}};
  const std::array<double, 7> flow = {900, 400, 900, 1500, 400, 700, 700};
  for (std::size_t g = 0; g < field.links.size(); ++g) {
    field.gain.push_back(between(0.3, 0.95));
    field.offset.push_back((1 - field.gain.back()) * between(275, 290));
    field.flow.push_back(flow.at(g));
  }
  return field;
}

}  // namespace

TEST_CASE("What bores in series do to the fluid is what each does to the outlet of the one before") {
  Field field{{{Link::none, false}, {0, false}, {1, true}}, {0.7, 0.8, 0.9}, {85, 57, 28}, {1200, 1200, 1200}};
  const loop::FieldOutlet outlet = field.outlet();
  for (const double inlet : {270.0, 283.0, 305.0}) {
    const double first = field.outlet_of(0, inlet), second = field.outlet_of(1, first);
    CHECK(field.circuits.inlet(0, inlet) == inlet);
    CHECK(field.circuits.inlet(1, inlet) == Approx(first).margin(round_off));
    CHECK(field.circuits.inlet(2, inlet) == Approx(second).margin(round_off));
    CHECK(outlet.gain * inlet + outlet.offset == Approx(field.outlet_of(2, second)).margin(round_off));
  }
}

TEST_CASE("What comes back mixes by its flow") {
  // 3 bores of 1000 W/K that return 280 K and one of 500 W/K that returns 294 K: (3 * 280 + 0.5 * 294)/3.5 = 282 K.
  Field field{{{Link::none, true, 3}, {Link::none, true, 1}}, {0, 0}, {280, 294}, {1000, 500}};
  const loop::FieldOutlet outlet = field.outlet();
  CHECK(outlet.heat_rate == 3500);
  CHECK(outlet.gain == 0);
  CHECK(outlet.offset == Approx(282).margin(round_off));
}

TEST_CASE("The heat that the fluid loses in the field is what it loses in all its bores") {
  Field field = seven_groups();
  const loop::FieldOutlet outlet = field.outlet();
  const double inlet = 301;
  double in_bores = 0;
  for (std::size_t g = 0; g < field.links.size(); ++g) {
    const double enters = field.circuits.inlet(g, inlet);
    in_bores += field.links[g].members * field.flow[g] * (enters - field.outlet_of(g, enters));
  }
  const double in_field = outlet.heat_rate * (inlet - (outlet.gain * inlet + outlet.offset));
  CHECK(in_field == Approx(in_bores).margin(outlet.heat_rate * round_off));
}

TEST_CASE("Circuits that give nothing off return what they were sent") {
  Field field = seven_groups();
  field.gain.assign(field.links.size(), 1.0);
  field.offset.assign(field.links.size(), 0.0);
  const loop::FieldOutlet outlet = field.outlet();
  CHECK(outlet.gain == Approx(1).margin(1e-15));
  CHECK(outlet.offset == 0);
}

TEST_CASE("A group without flow has no part in what comes back, whatever stands in it") {
  Field field = seven_groups();
  field.flow[3] = 0;
  const loop::FieldOutlet without = field.outlet();
  field.offset[3] = 1e6;
  field.gain[3] = 0.1;
  const loop::FieldOutlet still = field.outlet();
  CHECK(without.heat_rate == 2 * 400 + 3 * 900 + 700);
  CHECK(still.gain == without.gain);
  CHECK(still.offset == without.offset);
}

TEST_CASE("A field told by its outlet under load meets the heat pumps where the load says") {
  // 284 K without heat, and half a kelvin for each that the heat warms the fluid by.
  const double unloaded = 284, slope = 0.5, heat_rate = 2000, heat = 4000;
  const auto at = loop::operating_point(loop::outlet_under_load(unloaded, slope, heat_rate), {.to_ground = heat}, {});
  CHECK(at.eft == Approx(unloaded + slope * heat / heat_rate).margin(round_off));
  CHECK(at.lft == Approx(at.eft + heat / heat_rate).margin(round_off));
}
