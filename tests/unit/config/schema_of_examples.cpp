#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "engine/base/files.hpp"
#include "engine/config/tree.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using nlohmann::json;

namespace {

/// As editors read YAML 1.2: whole numbers, numbers, else text.
json value_of(const config::Node& node) {
  if (node.kind == config::Node::Kind::map) {
    json map = json::object();
    for (const config::Entry& entry : node.entries) map[entry.key] = value_of(entry.value);
    return map;
  }
  if (node.kind == config::Node::Kind::list) {
    json list = json::array();
    for (const config::Node& item : node.items) list.push_back(value_of(item));
    return list;
  }
  if (std::regex_match(node.text, std::regex("[-+]?[0-9]+"))) return std::stol(node.text);
  if (std::regex_match(node.text, std::regex("[-+]?([0-9]*[.])?[0-9]+([eE][-+]?[0-9]+)?"))) return std::stod(node.text);
  return node.text;
}

bool is_type(const json& value, const std::string& type) {
  if (type == "integer") return value.is_number_integer();
  if (type == "number") return value.is_number();
  if (type == "object") return value.is_object();
  return type == "array" ? value.is_array() : value.is_string();
}

/// What of JSON Schema 2020-12 the editors' schema says, looked at; a keyword that is not known here fails.
class Judge {
 public:
  explicit Judge(const json& schema) : root_(schema) {}

  std::vector<std::string> faults(const json& value) const {
    std::vector<std::string> found;
    look(value, root_, "", found);
    return found;
  }

 private:
  void look(const json& value, const json& rule, const std::string& at, std::vector<std::string>& found) const {
    static const std::set<std::string> remarks = {"$schema", "title", "description", "examples", "default"};
    for (const auto& [word, said] : rule.items()) {
      if (!remarks.contains(word) && !holds(value, rule, word, said, at, found)) found.push_back(at + ": " + word);
    }
  }

  bool holds(const json& value, const json& rule, const std::string& word, const json& said, const std::string& at,
             std::vector<std::string>& found) const {
    if (word == "$ref")
      return look(value, root_.at(json::json_pointer(said.get<std::string>().substr(1))), at, found), true;
    if (word == "enum") return std::find(said.begin(), said.end(), value) != said.end();
    if (word == "anyOf") {
      return std::any_of(said.begin(), said.end(), [&](const json& one) {
        std::vector<std::string> inner;
        look(value, one, at, inner);
        return inner.empty();
      });
    }
    if (word == "type") {
      const json types = said.is_array() ? said : json::array({said});
      return std::any_of(types.begin(), types.end(), [&](const json& type) { return is_type(value, type); });
    }
    if (word == "minimum") return !value.is_number() || value.get<double>() >= said.get<double>();
    if (word == "exclusiveMinimum") return !value.is_number() || value.get<double>() > said.get<double>();
    if (word == "maximum") return !value.is_number() || value.get<double>() <= said.get<double>();
    if (word == "items") {
      for (std::size_t i = 0; i < value.size(); ++i) look(value[i], said, at + "[]", found);
      return true;
    }
    return of_map(value, rule, word, said, at, found);
  }

  bool of_map(const json& value, const json& rule, const std::string& word, const json& said, const std::string& at,
              std::vector<std::string>& found) const {
    if (word == "minProperties") return value.size() >= said.get<std::size_t>();
    if (word == "required") {
      return std::all_of(said.begin(), said.end(),
                         [&](const json& key) { return value.contains(key.get<std::string>()); });
    }
    if (word == "properties") {
      for (const auto& [key, inner] : said.items()) {
        if (value.contains(key)) look(value.at(key), inner, at + "." + key, found);
      }
      return true;
    }
    if (word != "additionalProperties") return false;
    for (const auto& [key, inner] : value.items()) {
      if (rule.contains("properties") && rule.at("properties").contains(key)) continue;
      if (said.is_boolean() && !said.get<bool>()) return false;
      if (said.is_object()) look(inner, said, at + "." + key, found);
    }
    return true;
  }

  const json& root_;
};

const std::filesystem::path project(PROJECT_FOLDER);

json schema() {
  return json::parse(std::ifstream(project / "configs/scenario.schema.json"));
}

json scenario(const std::filesystem::path& file) {
  return value_of(config::read_tree(read_file(file), file.string()));
}

}  // namespace

// A general library for JSON Schema (jsonschema for Python, 4.26) was asked once and found the same.
TEST_CASE("Every example and the reference scenario are as the editors' schema says") {
  const json rules = schema();
  int looked_at = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(project / "examples")) {
    if (entry.path().extension() != ".yaml") continue;
    CAPTURE(entry.path().filename());
    const json given = scenario(entry.path());
    if (!given.contains("ground")) continue;  // a plan of many
    CHECK(Judge(rules).faults(given) == std::vector<std::string>{});
    ++looked_at;
  }
  CHECK(looked_at >= 21);
  CHECK(Judge(rules).faults(scenario(project / "configs/reference.yaml")) == std::vector<std::string>{});
}

TEST_CASE("The editors' schema finds out a misspelt key, a missing one, a wrong word and a number out of range") {
  const json rules = schema();
  const json sound = scenario(project / "examples/juniper_row/spacing_5m.yaml");
  const auto broken = [&](const char* pointer, const json& value) {
    json changed = sound;
    changed[json::json_pointer(pointer)] = value;
    return Judge(rules).faults(changed).size();
  };
  CHECK(Judge(rules).faults(sound).empty());
  CHECK(broken("/bore/diametre", "150 mm") == 1);
  CHECK(broken("/bore/loop", "triple-u") == 1);
  CHECK(broken("/field/grid/rows", 0) == 1);
  CHECK(broken("/bore/depth", 120) == 1);
  json without = sound;
  without["bore"].erase("grout");
  CHECK(Judge(rules).faults(without).size() == 1);
}
