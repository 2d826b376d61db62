#include "tools/results/notices.hpp"

#include <algorithm>

namespace stillground::results {

program::Notices notices_of(const record::Header& header) {
  return {header.warnings, header.cautions};
}

program::Notices notices_of(const std::vector<std::pair<std::string, program::Notices>>& layouts) {
  program::Notices all;
  for (const auto& [name, notices] : layouts) {
    for (const std::string& warning : notices.warnings) all.warnings.push_back(name + ": " + warning);
    for (const std::string& caution : notices.cautions) {
      if (std::find(all.cautions.begin(), all.cautions.end(), caution) == all.cautions.end()) {
        all.cautions.push_back(caution);
      }
    }
  }
  return all;
}

}  // namespace stillground::results
