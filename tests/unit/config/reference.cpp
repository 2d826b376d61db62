#include <algorithm>
#include <set>

#include "engine/assembly/assembly.hpp"
#include "engine/config/keys.hpp"
#include "engine/config/read.hpp"
#include "engine/config/tree.hpp"
#include "engine/job/warnings.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/config/reference_text.hpp"

using namespace stillground;
using namespace stillground::testing;

namespace {

const fs::path configs = fs::path(PROJECT_FOLDER) / "configs";

ReferenceText reference() {
  return ReferenceText(slurp(configs / "reference.yaml"));
}

const config::Key* row_of(const ShownKey& shown) {
  for (const config::Key& row : config::keys()) {
    if (row.path == pattern_of(shown.path)) return &row;
  }
  return nullptr;
}

/// What `check` would warn of, the text being a scenario beside the reference's files. Throws what it would refuse.
std::vector<std::string> warnings_of(const std::string& text) {
  const Scratch scratch;
  fs::create_directory_symlink(configs / "reference", scratch.folder / "reference");
  std::ofstream(scratch.folder / "site.yaml") << text;
  const model::Scenario scenario = config::read_scenario(scratch.folder / "site.yaml");
  const assembly::Assembly assembly = assembly::assemble(scenario);
  std::vector<std::string> texts;
  for (const Warning& warning : job::warnings_before(assembly)) texts.push_back(warning.text);
  return texts;
}

void collect(const config::Node& node, const std::string& path, std::set<std::string>& paths) {
  if (path == "heat_pump.heating_cop" || path == "heat_pump.hot_water_cop" || path == "heat_pump.cooling_cop") return;
  for (std::size_t i = 0; i < node.items.size(); ++i)
    collect(node.items[i], path + "[" + std::to_string(i + 1) + "]", paths);
  for (const config::Entry& entry : node.entries) {
    const std::string below = path.empty() ? entry.key : path + "." + entry.key;
    paths.insert(below);
    collect(entry.value, below, paths);
  }
}

std::set<std::string> paths_of(const std::string& text) {
  std::set<std::string> paths;
  collect(config::read_tree(text, "reference"), "", paths);
  return paths;
}

std::string title(const Alternative& alternative) {
  return alternative.keys.empty() ? "an alternative without keys" : alternative.keys.front().path;
}

bool announced(const std::string& warning, const Alternative& alternative) {
  return std::any_of(alternative.warns.begin(), alternative.warns.end(),
                     [&](const std::string& words) { return warning.find(words) != warning.npos; });
}

}  // namespace

TEST_CASE("The reference scenario shows every key of the table exactly once", "[config]") {
  const ReferenceText text = reference();
  std::map<std::string, int> shown;
  for (const ShownKey& key : text.keys) ++shown[pattern_of(key.path)];
  for (const Alternative& alternative : text.alternatives) {
    for (const ShownKey& key : alternative.keys) ++shown[pattern_of(key.path)];
  }
  for (const config::Key& row : config::keys()) {
    CAPTURE(row.path);
    CHECK(shown[std::string(row.path)] == 1);
  }
}

TEST_CASE("The keys that the reference's text shows in force are those that YAML finds in it", "[config]") {
  const ReferenceText text = reference();
  std::set<std::string> shown;
  for (const ShownKey& key : text.keys) shown.insert(key.path);
  CHECK(shown == paths_of(slurp(configs / "reference.yaml")));
}

TEST_CASE("The reference scenario can be run as it stands, without a warning", "[config]") {
  CHECK(warnings_of(slurp(configs / "reference.yaml")).empty());
}

TEST_CASE("Each alternative of the reference can be run in its place, with the warnings that it announces",
          "[config]") {
  const ReferenceText text = reference();
  CHECK(text.alternatives.size() >= 20);
  for (const Alternative& alternative : text.alternatives) {
    CAPTURE(title(alternative));
    const std::string edited = text.in_force(alternative);
    const std::set<std::string> paths = paths_of(edited);
    for (const ShownKey& key : alternative.keys) CHECK(paths.count(key.path) == 1);
    std::vector<std::string> warnings;
    CHECK_NOTHROW(warnings = warnings_of(edited));
    for (const std::string& warning : warnings) {
      CAPTURE(warning);
      CHECK(announced(warning, alternative));
    }
    CHECK(warnings.size() == alternative.warns.size());
  }
}

TEST_CASE("What an alternative of the reference says it excludes is refused beside it", "[config]") {
  const ReferenceText text = reference();
  int tried = 0;
  for (const Alternative& alternative : text.alternatives) {
    for (const std::string& path : alternative.instead) {
      CAPTURE(title(alternative), path);
      CHECK_THROWS_AS(warnings_of(text.in_force(alternative, path)), InputError);
      ++tried;
    }
  }
  CHECK(tried >= 30);
}

TEST_CASE("The reference says of every key its range, its words and what holds without it", "[config]") {
  const ReferenceText text = reference();
  std::vector<ShownKey> all = text.keys;
  for (const Alternative& one : text.alternatives) all.insert(all.end(), one.keys.begin(), one.keys.end());
  int seen = 0;
  for (const ShownKey& shown : all) {
    const config::Key* row = row_of(shown);
    if (row == nullptr) continue;  // a key that stands inside another as well, and is explained there
    CAPTURE(shown.path, shown.comment);
    CHECK(shown.comment.size() > 10);
    std::vector<std::string> needed = config::words(*row);
    for (const std::string_view said : {row->least, row->most, row->preset, row->example2}) needed.emplace_back(said);
    for (const std::string& word : needed) {
      CAPTURE(word);
      CHECK(shown.comment.find(word) != std::string::npos);
      seen += word.empty() ? 0 : 1;
    }
  }
  CHECK(seen > 250);
}
