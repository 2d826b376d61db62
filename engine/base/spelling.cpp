#include "engine/base/spelling.hpp"

#include <algorithm>

namespace stillground {

namespace {

std::size_t changes(const std::string& a, const std::string& b) {
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        d[i][j] = i + j;
        continue;
      }
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] != b[j - 1] ? 1U : 0U)});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  }
  return d[a.size()][b.size()];
}

}  // namespace

std::optional<std::string> nearest_word(const std::string& word, const std::vector<std::string>& candidates) {
  std::optional<std::string> nearest;
  std::size_t fewest = 0;
  for (const std::string& candidate : candidates) {
    const std::size_t n = changes(word, candidate);
    // One letter is as near to every other: nothing is known of a word that would change as a whole.
    const bool near_enough = n <= std::max<std::size_t>(1, candidate.size() / 3) && n < word.size();
    if (near_enough && (!nearest || n < fewest)) {
      nearest = candidate;
      fewest = n;
    }
  }
  return nearest;
}

}  // namespace stillground
