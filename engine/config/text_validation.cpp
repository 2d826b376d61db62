#include "engine/config/text_validation.hpp"

#include <algorithm>
#include <cstddef>

#include "engine/base/where.hpp"

namespace stillground::config {
namespace {

/// Length of the well-formed character at the front, 0 if it is none. Source: Unicode Standard, table 3-7 (from
/// memory).
std::size_t character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xc0) == 0x80; };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xc2 && first <= 0xdf) return follows(1) ? 2 : 0;
  if (first >= 0xe0 && first <= 0xef) {
    const bool overlong = first == 0xe0 && byte(1) < 0xa0;
    const bool surrogate = first == 0xed && byte(1) > 0x9f;
    return follows(1) && follows(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xf0 && first <= 0xf4) {
    const bool overlong = first == 0xf0 && byte(1) < 0x90;
    const bool beyond = first == 0xf4 && byte(1) > 0x8f;
    return follows(1) && follows(2) && follows(3) && !overlong && !beyond ? 4 : 0;
  }
  return 0;
}

bool control(char c) {
  const auto value = static_cast<unsigned char>(c);
  return (value < 0x20 && c != '\t' && c != '\n' && c != '\r') || value == 0x7f;
}

}  // namespace

std::string_view without_mark(std::string_view text) {
  return text.starts_with("\xef\xbb\xbf") ? text.substr(3) : text;
}

void check_plain_text(std::string_view text, const std::string& file) {
  text = without_mark(text);
  int line = 1, column = 1;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = character(text.substr(at));
    if (length == 0) Where{{file, line, column}, ""}.refuse("not UTF-8 text (save the file as UTF-8)");
    if (length == 1 && control(text[at])) {
      Where{{file, line, column}, ""}.refuse("a control character (is this a text file, saved as UTF-8?)");
    }
    ++column;
    if (text[at] == '\n') {
      ++line;
      column = 1;
    }
    at += length;
  }
}

void check_yaml_lines(std::string_view text, const std::string& file) {
  text = without_mark(text);
  for (int line = 1; !text.empty(); ++line) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view content = text.substr(0, end);
    const std::size_t first = std::min(content.find_first_not_of(" \t\r"), content.size());
    const std::size_t tab = content.substr(0, first).find('\t');
    if (tab != content.npos && first < content.size() && content[first] != '#') {
      Where{{file, line, static_cast<int>(tab) + 1}, ""}.refuse("a tab indents this line; use spaces");
    }
    if (content.starts_with('%')) Where{{file, line, 1}, ""}.refuse("% directives are not used here");
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

}  // namespace stillground::config
