#include "engine/base/spelling.hpp"

#include "tests/catch.hpp"

using stillground::nearest_word;

TEST_CASE("A slip of the finger finds the word that was meant") {
  const std::vector<std::string> words = {"check", "run", "compare", "conductivity", "heat_capacity"};
  CHECK(nearest_word("chek", words) == "check");
  CHECK(nearest_word("hceck", words) == "check");
  CHECK(nearest_word("conductvity", words) == "conductivity");
  CHECK(nearest_word("heat_capasity", words) == "heat_capacity");
  CHECK(nearest_word("runn", words) == "run");
}

TEST_CASE("A word that resembles nothing gets no advice") {
  CHECK_FALSE(nearest_word("frobnicate", {"check", "run", "compare"}).has_value());
  CHECK_FALSE(nearest_word("check", {}).has_value());
  CHECK_FALSE(nearest_word("y", {"x", "north"}).has_value());
}

TEST_CASE("Of equally near words the first is advised") {
  CHECK(nearest_word("ab", {"ac", "ad"}) == "ac");
}
