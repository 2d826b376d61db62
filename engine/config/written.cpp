#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "engine/config/overrides.hpp"

namespace stillground::config {
namespace {

/// Whether YAML takes it for the same plain text without marks of quotation.
bool is_plain(std::string_view text) {
  constexpr std::array<std::string_view, 4> nothing = {"~", "null", "Null", "NULL"};
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'); };
  if (text.empty() || text.back() == ' ' || std::find(nothing.begin(), nothing.end(), text) != nothing.end()) {
    return false;
  }
  const bool digit_follows = text.size() > 1 && text[0] == '-' && letter(text[1]);
  return (letter(text[0]) || digit_follows) && std::all_of(text.begin(), text.end(), [&](char c) {
           return letter(c) || std::string_view(" ._/+-()%").find(c) != std::string_view::npos;
         });
}

std::string scalar(std::string_view text) {
  if (is_plain(text)) return std::string(text);
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') quoted += '\\';
    if (c == '\n') {
      quoted += "\\n";
    } else {
      quoted += c;
    }
  }
  return quoted + '"';
}

bool stands_on_the_line(const Node& value) {
  return (value.kind == Node::Kind::map && value.entries.empty()) || value.kind == Node::Kind::scalar ||
         value.kind == Node::Kind::none || (value.kind == Node::Kind::list && value.items.empty());
}

void write_below(const Node& value, std::size_t indent, std::string& out);

/// What follows "key:" or "-".
void write_value(const Node& value, std::size_t indent, std::string& out) {
  if (stands_on_the_line(value)) {
    out += " " + on_one_line(value) + "\n";
  } else {
    out += "\n";
    write_below(value, indent, out);
  }
}

void write_below(const Node& value, std::size_t indent, std::string& out) {
  const std::string blanks(indent, ' ');
  for (const Entry& entry : value.entries) {
    out += blanks + scalar(entry.key) + ":";
    write_value(entry.value, indent + 2, out);
  }
  for (const Node& item : value.items) {
    out += blanks + "-";
    write_value(item, indent + 2, out);
  }
}

}  // namespace

std::string on_one_line(const Node& value) {
  std::vector<std::string> parts;
  switch (value.kind) {
    case Node::Kind::none:
      return "~";
    case Node::Kind::scalar:
      return scalar(value.text);
    case Node::Kind::list:
      for (const Node& item : value.items) parts.push_back(on_one_line(item));
      return fmt::format("[{}]", fmt::join(parts, ", "));
    case Node::Kind::map:
      for (const Entry& entry : value.entries) {
        parts.push_back(fmt::format("{}: {}", scalar(entry.key), on_one_line(entry.value)));
      }
      return fmt::format("{{{}}}", fmt::join(parts, ", "));
  }
  return "";
}

std::string written(const Node& tree) {
  std::string out;
  write_below(tree, 0, out);
  return out;
}

std::string text_with(const std::vector<Override>& overrides, const Node& tree, const std::string& original) {
  std::string out = fmt::format("# {} with\n", original);
  for (const Override& given : overrides) out += fmt::format("#   {}: {}\n", given.path, on_one_line(given.value));
  return out + written(tree);
}

}  // namespace stillground::config
