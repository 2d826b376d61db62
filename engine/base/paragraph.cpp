#include "engine/base/paragraph.hpp"

#include <algorithm>
#include <sstream>

namespace stillground {

std::size_t width(const std::string& utf8) {
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // continuation bytes take no room
  }));
}

std::string wrapped(const std::string& paragraph, std::size_t columns, const std::string& indent) {
  std::istringstream words(paragraph);
  std::string lines;
  std::string word;
  std::size_t used = 0;
  while (words >> word) {
    const std::size_t length = width(word);
    const bool breaks = used > 0 && used + 1 + length > columns;
    if (breaks) {
      lines += '\n' + indent;
      used = width(indent);
    } else if (used > 0) {
      lines += ' ';
      ++used;
    }
    lines += word;
    used += length;
  }
  return lines;
}

}  // namespace stillground
