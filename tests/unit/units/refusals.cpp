#include <string>

#include "engine/units/quantity.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using stillground::testing::Contains;
using stillground::testing::Equals;
using units::Dimension;

namespace {

std::string refusal(const std::string& text, Dimension dimension) {
  const Where where{{"site.yaml", 14, 19}, "bore.depth"};
  try {
    units::to_si(text, dimension, where);
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

}  // namespace

TEST_CASE("A quantity of another dimension is refused with place, key and examples in both unit systems", "[units]") {
  CHECK_THAT(refusal("120 W", Dimension::length),
             Equals(R"(site.yaml:14:19: bore.depth: "120 W" is not a length (try "120 m" or "400 ft"))"));
  CHECK_THAT(refusal("0.35 kg/s", Dimension::volume_flow), Contains("is not a volume flow"));
  CHECK_THAT(refusal("120 m", Dimension::temperature), Contains("is not a temperature"));
  CHECK_THAT(refusal("9 K/m", Dimension::temperature_difference), Contains("is not a temperature difference"));
  CHECK_THAT(refusal("30 m", Dimension::time), Contains("is not a time (try \"30 min\" or \"1 h\")"));
  CHECK_THAT(refusal("20 m", Dimension::fraction), Contains("is not a fraction"));
}

TEST_CASE("A bare number has no dimension", "[units]") {
  CHECK_THAT(refusal("120", Dimension::length), Contains(R"("120" has no unit (try "120 m" or "400 ft"))"));
  CHECK_THAT(refusal("12", Dimension::temperature), Contains("has no unit"));
  CHECK_THAT(refusal("0", Dimension::length), Contains("has no unit"));
}

TEST_CASE("A text that is not one number and one unit is refused", "[units]") {
  CHECK_THAT(refusal("", Dimension::length), Contains("does not begin with a number"));
  CHECK_THAT(refusal("deep", Dimension::length), Contains("does not begin with a number"));
  CHECK_THAT(refusal("m 120", Dimension::length), Contains("does not begin with a number"));
  CHECK_THAT(refusal("400 ft 6 in", Dimension::length), Contains("a quantity has one number and one unit"));
  CHECK_THAT(refusal("1 000 m", Dimension::length), Contains("a quantity has one number and one unit"));
  CHECK_THAT(refusal("1,200 m", Dimension::length), Contains("has a comma in its number"));
  CHECK_THAT(refusal("2,3 W/(m K)", Dimension::conductivity), Contains("has a comma in its number"));
  CHECK_THAT(refusal("2 W/(m K", Dimension::conductivity), Contains("a bracket is not closed"));
  CHECK_THAT(refusal("2 W/", Dimension::conductivity), Contains("a unit is missing"));
  CHECK_THAT(refusal("2 W//m", Dimension::conductivity), Contains("a unit is missing"));
  CHECK_THAT(refusal("2 m)", Dimension::length), Contains("was not expected in a unit"));
  CHECK_THAT(refusal("2 m25", Dimension::length), Contains("an exponent has one figure"));
  CHECK_THAT(refusal("2 m since 1970", Dimension::length), Contains("one number and one unit"));
  CHECK_THAT(refusal("2 m @ 3", Dimension::length), Contains("a unit is missing"));
  CHECK_THAT(refusal("0x10 m", Dimension::length), Contains("is not a length"));
  CHECK_THAT(refusal("2 m; rm", Dimension::length), Contains("a unit is missing"));
  CHECK_THAT(refusal(std::string(200, '('), Dimension::length), Contains("too long for a quantity"));
  CHECK_THAT(refusal("2 " + std::string(100, '('), Dimension::length), Contains("a unit is missing"));
}

TEST_CASE("A raised digit is an exponent, never a digit of the number", "[units]") {
  CHECK_THAT(refusal("0.06\u00b25 m", Dimension::length), Contains("is not a length: a unit is missing"));
  CHECK_THAT(refusal("12\u00b2 m", Dimension::length), Contains("is not a length: a unit is missing"));
}

TEST_CASE("A number that is not finite is refused", "[units]") {
  for (const char* text : {"inf m", "nan m", "-inf m", "infinity m"}) {
    CHECK_THAT(refusal(text, Dimension::length), Contains("does not begin with a number"));
  }
  CHECK_THAT(refusal("1e999 m", Dimension::length), Contains("beyond what a number can hold"));
  CHECK_THAT(refusal("1e308 km", Dimension::length), Contains("beyond what a number can hold"));
}

TEST_CASE("A temperature below absolute zero is refused", "[units]") {
  CHECK_THAT(refusal("-1 K", Dimension::temperature), Contains("is below absolute zero"));
  CHECK_THAT(refusal("-500 degF", Dimension::temperature), Contains("is below absolute zero"));
  CHECK(units::to_si("-459.6 degF", Dimension::temperature, {}) == Approx(0.07 / 1.8).epsilon(1e-9));
}

TEST_CASE("A unit with two meanings is refused with what to write", "[units]") {
  CHECK_THAT(refusal("3 a", Dimension::time),
             Contains(R"(the unit "a" has two meanings: a year or an are? Write "year")"));
  CHECK_THAT(refusal("3 months", Dimension::time), Contains("months differ"));
  CHECK_THAT(refusal("5 hp", Dimension::power), Contains("horsepower differs between countries"));
  CHECK_THAT(refusal("5 MBtu/h", Dimension::power), Contains(R"(Write "kBtu" or "MMBtu")"));
  CHECK_THAT(refusal("6\"", Dimension::length), Contains("Write \"in\""));
  CHECK_THAT(refusal("110 psig", Dimension::pressure), Contains("write \"psi\""));
}

TEST_CASE("An unknown unit is named, with a near one", "[units]") {
  CHECK_THAT(refusal("12 Kw", Dimension::power), Contains(R"(has an unknown unit "Kw", did you mean "kW"?)"));
  CHECK_THAT(refusal("12 pzi", Dimension::pressure), Contains(R"(has an unknown unit "pzi", did you mean "psi"?)"));
  CHECK_THAT(refusal("12 M", Dimension::length), Contains(R"(has an unknown unit "M", did you mean "m"?)"));
  CHECK_THAT(refusal("12 blorg", Dimension::length), Contains(R"(has an unknown unit "blorg" (try)"));
}
