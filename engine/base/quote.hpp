#pragma once

#include <string>
#include <string_view>

namespace stillground {

/// The text in quotation marks for a message: control characters as "?", at most 120 bytes of it, cut between
/// characters.
inline std::string quote(std::string_view text) {
  constexpr std::size_t most = 120;
  std::string shown(text.substr(0, most));
  if (text.size() > most) {
    const auto continues = [](char c) { return (static_cast<unsigned char>(c) & 0xc0) == 0x80; };
    for (std::size_t next = most; next > 0 && continues(text[next]); --next) shown.pop_back();
    shown += "...";
  }
  for (char& c : shown) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
  }
  return '"' + shown + '"';
}

}  // namespace stillground
