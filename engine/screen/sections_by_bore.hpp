#pragma once

#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "engine/assembly/flow_regimes.hpp"

namespace stillground::screen {

/// The cross-sections of the bores that the variants of one batch, or of several, have: each solved once. From any
/// thread.
class SectionsByBore {
 public:
  /// Those that serve a bore: shared with all bores of the same section.
  std::shared_ptr<assembly::SolvedSections> of(const model::Bore& bore);

 private:
  std::mutex mutex_;
  std::vector<std::pair<model::Bore, std::shared_ptr<assembly::SolvedSections>>> known_;
};

}  // namespace stillground::screen
