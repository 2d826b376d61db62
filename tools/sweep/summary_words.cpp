#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "tools/sweep/summary.hpp"

namespace stillground::sweep {

std::string listed(const std::vector<std::size_t>& numbers) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    parts.push_back(last == i ? fmt::format("{}", numbers[i])
                              : fmt::format("{}{}{}", numbers[i], last == i + 1 ? ", " : "-", numbers[last]));
    i = last + 1;
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

std::string counts_text(const Told& told) {
  std::size_t screened = 0, marched = 0, failed = 0, kept = 0;
  for (const Standing& standing : told.state) {
    const Record* record = standing.shown();
    if (!standing.point.failed.empty() || (record != nullptr && !record->failed.empty())) {
      ++failed;
    } else if (record != nullptr) {
      ++(standing.march ? marched : screened);
      kept += record->kept ? 1 : 0;
    }
  }
  std::string text = fmt::format("{} points: {} screened, {} marched", told.state.size(), screened, marched);
  if (failed > 0) text += fmt::format(", {} failed", failed);
  return text + fmt::format("; {} of them keep all limits", kept);
}

program::Notices notices_of(const Told& told, bool all) {
  constexpr std::size_t told_of = 3;
  program::Notices notices;
  std::size_t others = 0;
  for (std::size_t i = 0; i < told.ranking.size(); ++i) {
    const Record* record = told.state[told.ranking[i] - 1].shown();
    if (record == nullptr || record->decision.warnings.empty()) continue;
    if (!all && i >= told_of) {
      ++others;
      continue;
    }
    for (const std::string& warning : record->decision.warnings) {
      notices.warnings.push_back(fmt::format("point {}: {}", told.ranking[i], warning));
    }
  }
  if (others > 0)
    notices.warnings.push_back(
        fmt::format("{} points besides the best {} have warnings: --json tells them all", others, told_of));
  for (const Standing& standing : told.state) {
    for (const std::string& caution : standing.point.cautions) {
      if (std::find(notices.cautions.begin(), notices.cautions.end(), caution) == notices.cautions.end()) {
        notices.cautions.push_back(caution);
      }
    }
  }
  return notices;
}

}  // namespace stillground::sweep
