#include "tools/present/labels.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <sstream>
#include <string_view>

namespace stillground::present {

namespace {

double letter_width(char c) {
  static constexpr std::string_view narrow = " .,:;|!'ijlI()[]ftr";
  static constexpr std::string_view wide = "mwMWGOQ%@+<>=";
  if ((static_cast<unsigned char>(c) & 0xC0U) == 0x80U) return 0;  // continuation of a code point already counted
  if (narrow.find(c) != std::string_view::npos) return 0.37;
  if (wide.find(c) != std::string_view::npos) return 0.87;
  return 0.63;
}

struct Pool {
  double mean = 0;
  std::size_t count = 0;
};

/// Non-decreasing values nearest to `wishes` in the least-squares sense.
std::vector<double> isotonic(const std::vector<double>& wishes) {
  std::vector<Pool> pools;
  for (const double wish : wishes) {
    pools.push_back({wish, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean > pools.back().mean) {
      const Pool last = pools.back();
      pools.pop_back();
      Pool& before = pools.back();
      const auto a = static_cast<double>(before.count);
      const auto b = static_cast<double>(last.count);
      before = {(before.mean * a + last.mean * b) / (a + b), before.count + last.count};
    }
  }
  std::vector<double> values;
  for (const Pool& pool : pools) values.insert(values.end(), pool.count, pool.mean);
  return values;
}

}  // namespace

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

double text_width(const std::string& utf8, double size) {
  double widest = 0;
  for (const std::string& line : lines_of(utf8)) {
    widest = std::max(widest, std::accumulate(line.begin(), line.end(), 0.0,
                                              [](double sum, char c) { return sum + letter_width(c); }));
  }
  return widest * size;
}

std::string fitted(const std::string& utf8, double size, double room) {
  if (text_width(utf8, size) <= room) return utf8;
  std::string shorter = utf8;
  const auto continues = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; };
  while (!shorter.empty() && text_width(shorter + "…", size) > room) {
    while (!shorter.empty() && continues(shorter.back())) shorter.pop_back();
    if (!shorter.empty()) shorter.pop_back();
  }
  return shorter + "…";
}

std::vector<std::string> lines_within(const std::string& paragraph, double size, double room) {
  std::istringstream words(paragraph);
  std::vector<std::string> lines;
  for (std::string word; words >> word;) {
    if (!lines.empty() && text_width(lines.back() + " " + word, size) <= room) {
      lines.back() += " " + word;
    } else {
      lines.push_back(word);
    }
  }
  return lines;
}

std::vector<double> spread(const std::vector<Wanted>& labels, double from, double to) {
  std::vector<std::size_t> order(labels.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return labels[a].wish < labels[b].wish; });
  // Less the room that the labels before it need, a label's centre must not fall below theirs.
  std::vector<double> offsets;
  std::vector<double> wishes;
  double used = 0;
  for (const std::size_t i : order) {
    offsets.push_back(used + labels[i].height / 2);
    used += labels[i].height;
    wishes.push_back(labels[i].wish - offsets.back());
  }
  const std::vector<double> placed = isotonic(wishes);
  std::vector<double> centres(labels.size());
  for (std::size_t k = 0; k < order.size(); ++k) {
    centres[order[k]] = std::clamp(placed[k], from, std::max(from, to - used)) + offsets[k];
  }
  return centres;
}

}  // namespace stillground::present
