#include "engine/base/quote.hpp"

#include "tests/catch.hpp"

using stillground::quote;

TEST_CASE("What is quoted stays on one line and cannot steer a terminal", "[base]") {
  CHECK(quote("120 W") == "\"120 W\"");
  CHECK(quote("a\nb\x1b[2J") == "\"a?b?[2J\"");
}

TEST_CASE("A long text is cut between characters", "[base]") {
  CHECK(quote(std::string(120, 'x')) == '"' + std::string(120, 'x') + '"');
  CHECK(quote(std::string(121, 'x')) == '"' + std::string(120, 'x') + "...\"");
  CHECK(quote(std::string(119, 'x') + "\u00b0x") == '"' + std::string(119, 'x') + "...\"");
}
