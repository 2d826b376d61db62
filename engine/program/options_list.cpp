#include "engine/program/options_list.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <vector>

namespace stillground::program {

namespace {

/// "FILE", "si|us"; of a list of words, which CLI11 shows as "TEXT:{a,b}", these alone.
std::string taken(const CLI::Option& option) {
  const bool is_flag = option.get_items_expected_max() == 0;
  std::string type = is_flag ? "" : option.get_type_name();
  const auto begin = type.find('{'), end = type.find('}');
  if (begin == std::string::npos || end == std::string::npos) return type;
  type = type.substr(begin + 1, end - begin - 1);
  std::replace(type.begin(), type.end(), ',', '|');
  return type;
}

}  // namespace

std::string options_list(const CLI::App& app) {
  std::string positional, named;
  for (const CLI::Option* option : app.get_options()) {
    std::vector<std::string> names;
    for (const std::string& name : option->get_snames()) names.push_back("-" + name);
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    if (names.empty()) {
      positional += fmt::format("{}\t\t{}\n", option->get_name(true), option->get_description());
    } else {
      named += fmt::format("{}\t{}\t{}\n", fmt::join(names, " "), taken(*option), option->get_description());
    }
  }
  return positional + named;
}

}  // namespace stillground::program
