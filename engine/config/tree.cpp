#include "engine/config/tree.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <sstream>
#include <utility>

#include "engine/base/quote.hpp"
#include "engine/base/where.hpp"
#include "engine/config/text_validation.hpp"

namespace stillground::config {
namespace {

/// Builds the tree from the parser's events. The library's own tree accepts repeated keys and circular aliases in
/// silence and places a missing value at the next line.
class Builder : public YAML::EventHandler {
 public:
  Builder(const std::string& file, std::string_view text) : file_(file) {
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      lines_.push_back(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
  }

  Node root;
  bool found = false;

  /// The parser counts columns in bytes, people in letters.
  Place place(const YAML::Mark& mark) const {
    if (mark.is_null()) return {file_, 0, 0};
    const auto line = static_cast<std::size_t>(mark.line), bytes = static_cast<std::size_t>(mark.column);
    const std::string_view before = line < lines_.size() ? lines_[line].substr(0, bytes) : std::string_view{};
    const auto inside = [](char c) { return (static_cast<unsigned char>(c) & 0xc0) == 0x80; };
    const auto inner_bytes = std::count_if(before.begin(), before.end(), inside);
    return {file_, mark.line + 1, mark.column + 1 - static_cast<int>(inner_bytes)};
  }

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (found) refuse(mark, "a second document begins; a file holds one");
    found = true;
  }
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    gate(mark, "", anchor);
    add(node(Node::Kind::none, mark));
  }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    refuse(mark, "aliases (*) are not used here; write the value again");
  }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    gate(mark, tag, anchor);
    Node scalar = node(Node::Kind::scalar, mark);
    scalar.text = value;
    check_quotation(mark);
    add(std::move(scalar));
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    gate(mark, tag, anchor);
    open(node(Node::Kind::list, mark));
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    gate(mark, tag, anchor);
    open(node(Node::Kind::map, mark));
  }
  void OnMapEnd() override { close(); }

 private:
  /// A list or map that is still being read, and the key whose value comes next.
  struct Level {
    Node node;
    bool has_key = false;
    std::string key;
    Place key_place;
  };

  [[noreturn]] void refuse(const YAML::Mark& mark, const std::string& text) const {
    throw InputError(place(mark), "", text);
  }

  void gate(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) const {
    // "?" is the parser's mark of a plain value, "!" of one in quotation marks.
    if (!tag.empty() && tag != "?" && tag != "!") refuse(mark, "tags (!) are not used here; write the plain value");
    if (anchor != YAML::NullAnchor) refuse(mark, "anchors (&) are not used here; write the value where it is needed");
  }

  /// A mark that is not closed would swallow lines up to the next one, and the parser would blame that line.
  void check_quotation(const YAML::Mark& mark) const {
    const auto line = static_cast<std::size_t>(mark.line), column = static_cast<std::size_t>(mark.column);
    const std::string_view rest =
        line < lines_.size() && column < lines_[line].size() ? lines_[line].substr(column) : "";
    const bool quoted = rest.starts_with('"') || rest.starts_with('\'');
    if (quoted && rest.find(rest[0], 1) == rest.npos) {
      refuse(mark, "the quotation mark that opens here is not closed on its line");
    }
  }

  Node node(Node::Kind kind, const YAML::Mark& mark) const {
    Node result;
    result.kind = kind;
    result.place = place(mark);
    return result;
  }

  void open(Node opened) {
    if (levels_.size() >= deepest_level) {
      throw InputError(opened.place, "", fmt::format("nested deeper than {} levels", deepest_level));
    }
    levels_.push_back({std::move(opened), false, "", {}});
  }

  void close() {
    Node finished = std::move(levels_.back().node);
    levels_.pop_back();
    add(std::move(finished));
  }

  void add(Node value) {
    if (levels_.empty()) {
      root = std::move(value);
      return;
    }
    Level& level = levels_.back();
    if (level.node.kind == Node::Kind::list) {
      level.node.items.push_back(std::move(value));
    } else if (!level.has_key) {
      take_key(level, value);
    } else {
      // The parser places a missing value wherever the next thing stands.
      if (value.kind == Node::Kind::none) value.place = level.key_place;
      level.node.entries.push_back({std::move(level.key), level.key_place, std::move(value)});
      level.has_key = false;
    }
  }

  void take_key(Level& level, const Node& value) const {
    const Where where{value.place, ""};
    if (value.kind != Node::Kind::scalar) where.refuse("a key must be a plain word");
    if (const Entry* first = level.node.find(value.text)) {
      where.refuse(fmt::format("repeated key {} (first given in line {})", quote(value.text), first->place.line));
    }
    level.has_key = true;
    level.key = value.text;
    level.key_place = value.place;
  }

  std::string file_;
  std::vector<std::string_view> lines_;
  std::vector<Level> levels_;
};

/// The parser's short messages in words that help.
std::string in_words(const std::string& message) {
  static constexpr std::pair<std::string_view, std::string_view> table[] = {
      {"illegal map value",
       "a colon where none can stand (indentation, or text with a colon that needs quotation marks)"},
      {"end of map flow not found", "a { is not closed, or a comma or colon is missing"},
      {"end of sequence flow not found", "a [ is not closed, or a comma is missing"},
      {"end of map not found", "this does not belong to the lines above (indentation, or a key without its colon)"},
      {"end of sequence not found", "this does not belong to the list above (indentation, or a missing dash)"},
      {"illegal EOF in scalar", "a quotation mark is not closed"},
      {"unknown token", "a character that cannot begin a value (put the value in quotation marks)"},
      {"bad file", "the file ends too early (something is not closed)"},
      {"the referenced anchor is not defined", "aliases (*) are not used here; write the value again"},
  };
  for (const auto& [found, words] : table) {
    if (message.starts_with(found)) return std::string(words);
  }
  return message;
}

}  // namespace

const Entry* Node::find(std::string_view key) const {
  for (const Entry& entry : entries) {
    if (entry.key == key) return &entry;
  }
  return nullptr;
}

Node read_tree(std::string_view text, const std::string& file) {
  check_plain_text(text, file);
  check_yaml_lines(text, file);
  std::istringstream stream{std::string(without_mark(text))};
  Builder builder(file, without_mark(text));
  try {
    YAML::Parser parser(stream);
    while (parser.HandleNextDocument(builder)) {
    }
  } catch (const YAML::Exception& fault) {  // a fence: the library's exceptions end here
    throw InputError(builder.place(fault.mark), "", "not valid YAML: " + in_words(fault.msg));
  }
  if (!builder.found || builder.root.kind == Node::Kind::none) throw InputError({file, 1, 1}, "", "the file is empty");
  if (builder.root.kind != Node::Kind::map) throw InputError({file, 1, 1}, "", "keys with values are expected here");
  return std::move(builder.root);
}

}  // namespace stillground::config
