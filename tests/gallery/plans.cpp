#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>

#include "engine/run/assembly.hpp"
#include "tests/gallery/gallery.hpp"
#include "tools/scenarios/plan.hpp"

using namespace stillground;

namespace {

const std::filesystem::path plans = gallery::folder / "plans";

std::string drawn(const std::string& name) {
  const model::Scenario scenario = gallery::read(name);
  const run::Assembly assembly = run::assemble(scenario);
  return present::svg(scenarios::site_plan(assembly));
}

std::string committed(const std::string& name) {
  std::ifstream file(plans / (name + ".svg"), std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

TEST_CASE("The plans of the gallery are what `plan` draws now") {
  for (const std::string& name : gallery::scenario_names()) {
    CAPTURE(name);
    const bool equal =
        drawn(name) == committed(name);  // not the texts themselves: a message of two pictures helps nobody
    CHECK(equal);
  }
}

// Not a test: hidden, run by hand when the drawing changes; look at the pictures afterwards.
TEST_CASE("Draw the gallery's plans anew", "[.draw]") {
  for (const std::string& name : gallery::scenario_names()) {
    std::ofstream file(plans / (name + ".svg"), std::ios::binary);
    file << drawn(name);
    CHECK(file.flush());
  }
}
