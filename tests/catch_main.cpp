// Catch2 3 has a main of its own in its library; this one serves version 2 as well.
#define CATCH_CONFIG_RUNNER
#include "tests/catch.hpp"
#if __has_include(<catch2/catch_session.hpp>)
#include <catch2/catch_session.hpp>
#endif

int main(int argc, char** argv) {
  return Catch::Session().run(argc, argv);
}
