#include "engine/program/notices.hpp"

#include "engine/program/shown_json.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::program;

TEST_CASE("A verb that found no warnings says so, and shows the cautions all the same") {
  CHECK(footer({{}, {"Mind the trench."}}) == "\nNo warnings from the model.\n\nCautions\n  Mind the trench.\n");
}

TEST_CASE("A warning stays on one line, a caution is broken") {
  const std::string longer(120, 'w');
  const std::string words = "word " + std::string(90, 'c') + " end of it";
  CHECK(footer({{longer}, {words}}) ==
        "\nWarnings\n  " + longer + "\n\nCautions\n  word " + std::string(90, 'c') + "\n    end of it\n");
}

TEST_CASE("A picture names the only warning, and counts several") {
  CHECK(footnotes({{"too slow"}, {"Mind the trench.", "Mind the pressure."}}) ==
        std::vector<std::string>{"Warning: too slow", "Caution: Mind the trench."});
  CHECK(footnotes({{"too slow", "too deep"}, {}}) == std::vector<std::string>{"2 warnings: see the table."});
  CHECK(footnotes({}) == std::vector<std::string>{"No warnings from the model."});
}

TEST_CASE("An object for machines changes every figure with its units, and nothing else") {
  const nlohmann::ordered_json kept = {{"depth", {{"value", 100}, {"units", "m"}}},
                                       {"eft", {{"units", "degC"}, {"values", {0, 10, nullptr}}}},
                                       {"years", {{"value", 25}, {"units", "year"}}},
                                       {"bores", 4},
                                       {"list", {{{"drift", {{"value", nullptr}, {"units", "K/decade"}}}}}}};
  CHECK(in_system(kept, UnitSystem::si) == kept);
  const auto us = in_system(kept, UnitSystem::us);
  CHECK(us["depth"]["value"].get<double>() == Approx(328.083989501));
  CHECK(us["depth"]["units"] == "ft");
  CHECK(us["eft"]["values"] == nlohmann::ordered_json({32.0, 50.0, nullptr}));
  CHECK(us["years"] == kept["years"]);
  CHECK(us["bores"] == 4);
  CHECK(us["list"][0]["drift"] == nlohmann::ordered_json({{"value", nullptr}, {"units", "degF/decade"}}));
}
