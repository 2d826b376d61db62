#pragma once

#include <map>
#include <regex>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "tests/cli/broken/cases.hpp"

/// The reference scenario as text: which keys it shows, in force or as alternatives, and what it says about each. Its
/// head states how alternatives are marked.
namespace stillground::testing {

/// A key as it is shown, in force or in an alternative.
struct ShownKey {
  std::string path;  ///< as in messages: ground.layers[1].to
  std::size_t line = 0;
  std::size_t indent = 0;
  std::string comment;  ///< its lines joined

  std::string leaf() const { return path.substr(path.rfind('.') + 1); }
};

/// Lines that can be put in force, and what has to be done for it.
struct Alternative {
  std::vector<ShownKey> keys;
  std::vector<std::string> instead, without, warns;
  std::map<std::string, std::string> with;
  std::vector<std::string> comment;
};

/// "ground.layers[1].to" is the table's "ground.layers[].to", "limits.eft_min.over" its "limits.*.over".
inline std::string pattern_of(const std::string& path) {
  const std::string items = std::regex_replace(path, std::regex(R"(\[\d+\])"), "[]");
  return std::regex_replace(items, std::regex(R"(^limits\.\w+\.)"), "limits.*.");
}

class ReferenceText {
 public:
  explicit ReferenceText(const std::string& text) : lines(parted(text, "\n")) {
    for (std::size_t i = 0; i < lines.size(); ++i) take(i);
  }

  std::vector<std::string> lines;
  std::vector<ShownKey> keys;  ///< in force
  std::vector<Alternative> alternatives;

  /// The text with an alternative in force. Of the keys that it says to take out, `kept` stays.
  std::string in_force(const Alternative& alternative, const std::string& kept = "") const {
    std::vector<std::string> result = lines;
    for (const auto* gone : {&alternative.instead, &alternative.without}) {
      for (const std::string& path : *gone) {
        if (path != kept) drop(shown(path), result);
      }
    }
    for (const auto& [path, value] : alternative.with) {
      std::string& line = result[shown(path).line];
      line = line.substr(0, line.find(':')) + ": " + value;
    }
    for (const ShownKey& key : alternative.keys) result[key.line].erase(result[key.line].find("#| "), 3);
    std::string text;
    for (const std::string& line : result) text += line + "\n";
    return text;
  }

 private:
  const ShownKey& shown(const std::string& path) const {
    for (const ShownKey& key : keys) {
      if (key.path == path) return key;
    }
    throw std::runtime_error("the reference takes out or changes a key that is not in force: " + path);
  }

  /// A key and what stands below it.
  void drop(const ShownKey& key, std::vector<std::string>& text) const {
    for (std::size_t i = key.line; i < text.size(); ++i) {
      const std::size_t first = text[i].find_first_not_of(' ');
      if (first == std::string::npos || text[i][first] == '#') continue;
      if (i > key.line && first <= key.indent) return;
      text[i].clear();
    }
  }

  void take(std::size_t number) {
    const std::string& line = lines[number];
    const std::size_t first = line.find_first_not_of(' ');
    if (first == std::string::npos) return comment_.clear();
    const std::string content = line.substr(first);
    if (content.starts_with("#? ")) return take_marker(content.substr(3));
    if (content.starts_with("#| ")) {
      open_ = false;
      return alternatives.back().keys.push_back(key_of(number, first, line.substr(first + 3)));
    }
    close_alternative();
    if (content[0] == '#') return comment_.push_back(content);
    ShownKey key = key_of(number, first, content);
    for (const std::string& part : comment_) key.comment += part.substr(1);
    comment_.clear();
    keys.push_back(key);
  }

  void take_marker(const std::string& text) {
    if (!open_) {
      close_alternative();
      alternatives.emplace_back().comment = std::exchange(comment_, {});
    }
    open_ = true;
    Alternative& alternative = alternatives.back();
    const auto after = [&](const std::string& words) { return text.substr(words.size()); };
    if (text.starts_with("instead of ")) {
      for (const auto& path : parted(after("instead of "), ", ")) alternative.instead.push_back(path);
    } else if (text.starts_with("without ")) {
      alternative.without.push_back(after("without "));
    } else if (text.starts_with("warns: ")) {
      alternative.warns.push_back(after("warns: "));
    } else if (text.starts_with("with ")) {
      const auto sides = parted(after("with "), ": ");
      alternative.with[sides.at(0)] = sides.at(1);
    } else if (text != "beside the others") {
      throw std::runtime_error("the reference has an unknown marker: " + text);
    }
  }

  /// Shares the comment out among the keys: each has its part after "# leaf: ", in their order.
  void close_alternative() {
    open_ = false;
    if (alternatives.empty() || alternatives.back().comment.empty()) return;
    const auto comment = std::exchange(alternatives.back().comment, {});
    auto& shown = alternatives.back().keys;
    std::size_t current = shown.size();
    for (const std::string& line : comment) {
      const std::size_t from = current == shown.size() ? 0 : current + 1;
      for (std::size_t i = from; i < shown.size(); ++i) {
        if (!line.starts_with("# " + shown[i].leaf() + ": ")) continue;
        current = i;
        break;
      }
      if (current < shown.size()) shown[current].comment += line.substr(1);
    }
  }

  /// `text` begins with the key, or with the dash of a list's item, at column `indent`.
  ShownKey key_of(std::size_t number, std::size_t indent, std::string text) {
    if (lines[number].find("#| ") != std::string::npos) {  // the mark's place is the block's; deeper keys follow it
      const std::size_t deeper = text.find_first_not_of(' ');
      indent += deeper;
      text.erase(0, deeper);
    }
    const auto leave = [&](std::size_t column) {
      while (!open_maps_.empty() && open_maps_.back().second >= column) open_maps_.pop_back();
    };
    leave(indent);
    if (text.starts_with("- ")) {
      const std::string list = open_maps_.back().first;
      open_maps_.emplace_back(list + "[" + std::to_string(++items_[list]) + "]", indent);
      indent += 2;
      text.erase(0, 2);
    }
    const std::size_t colon = text.find(':');
    if (colon == std::string::npos) throw std::runtime_error("the reference has a line without a key: " + text);
    const std::string leaf = text.substr(0, colon);
    const std::string path = open_maps_.empty() ? leaf : open_maps_.back().first + "." + leaf;
    open_maps_.emplace_back(path, indent);
    return {path, number, indent, ""};
  }

  std::vector<std::string> comment_;
  std::vector<std::pair<std::string, std::size_t>> open_maps_;  ///< path, column
  std::map<std::string, int> items_;                            ///< of each list so far
  bool open_ = false;                                           ///< among the markers of an alternative
};

}  // namespace stillground::testing
