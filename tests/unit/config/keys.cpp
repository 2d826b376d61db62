#include "engine/config/keys.hpp"

#include <algorithm>
#include <set>

#include "engine/config/section.hpp"
#include "engine/units/quantity.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::config;

namespace {

bool measured(const Key& row) {
  return row.kind == Kind::quantity || row.path == "loads.to_ground";
}

double value(std::string_view text, const Key& row) {
  const Where where{Place{}, std::string(row.path)};
  return units::to_si(text, row.dimension, where);
}

}  // namespace

TEST_CASE("Every key is in the table once, below a key that has keys", "[config]") {
  std::set<std::string_view> paths;
  for (const Key& row : config::keys()) {
    CAPTURE(row.path);
    CHECK(paths.insert(row.path).second);
    const std::size_t dot = row.path.rfind('.');
    if (dot == row.path.npos) continue;
    bool parent = false;
    for (const Key& above : config::keys()) {
      parent = parent || above.path == row.path.substr(0, dot) || above.inside == row.path.substr(0, dot);
    }
    CHECK(parent);
  }
}

TEST_CASE("Every example and preset of a quantity is allowed by its own row", "[config]") {
  int seen = 0;
  for (const Key& row : config::keys()) {
    if (!measured(row)) continue;
    CAPTURE(row.path);
    for (const std::string_view text : {row.example, row.example2, row.preset}) {
      if (text.empty()) continue;
      CHECK_NOTHROW(check_range(value(text, row), text, row, {}));
      ++seen;
    }
    CHECK_FALSE(row.example.empty());
    CHECK(value(row.least, row) < value(row.most, row));
  }
  CHECK(seen > 60);
}

TEST_CASE("The two examples of a quantity are of one size", "[config]") {
  for (const Key& row : config::keys()) {
    if (!measured(row) || row.example2.empty() || row.dimension == units::Dimension::temperature) continue;
    CAPTURE(row.path);
    CHECK(value(row.example2, row) == Approx(value(row.example, row)).epsilon(0.1));  // they are round figures
  }
}

TEST_CASE("Every word's example and preset is one of its words", "[config]") {
  int seen = 0;
  for (const Key& row : config::keys()) {
    if (row.kind != Kind::word) continue;
    CAPTURE(row.path);
    const auto allowed = words(row);
    for (const std::string_view text : {row.example, row.preset}) {
      if (text.empty()) continue;
      CHECK(std::count(allowed.begin(), allowed.end(), text) == 1);
      ++seen;
    }
  }
  CHECK(seen > 10);
}

TEST_CASE("Every key says what it is", "[config]") {
  for (const Key& row : config::keys()) {
    CAPTURE(row.path);
    CHECK_FALSE(row.help.empty());
  }
}

TEST_CASE("Keys below a path are its own only", "[config]") {
  CHECK(keys_below("field.grid").size() == 3);
  CHECK(keys_below("").size() == 12);
  CHECK(key("ground.layers[].to").leaf() == "to");
}
