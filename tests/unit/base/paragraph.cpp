#include "engine/base/paragraph.hpp"

#include "tests/catch.hpp"

using namespace stillground;

TEST_CASE("A paragraph breaks between words and keeps a word that is too long whole") {
  CHECK(wrapped("the ground warms  by little", 10) == "the ground\nwarms by\nlittle");
  CHECK(wrapped("immeasurably so", 5) == "immeasurably\nso");
}

TEST_CASE("Lines after the first begin with the indent, which counts") {
  CHECK(wrapped("one two three", 7, "  ") == "one two\n  three");
  CHECK(wrapped("one two three four", 9, "    ") == "one two\n    three\n    four");
}
