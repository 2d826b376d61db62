#pragma once

#include <filesystem>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/journal/journal.hpp"

namespace stillground::testing {

/// A journal's frames, each kind in its order.
struct Recorded {
  std::vector<record::Hour> hours;
  std::vector<record::Snapshot> snapshots;
  std::vector<record::YearMean> year_means;
  std::vector<record::YearBalance> balances;
};

Recorded recorded(record::Journal& journal);

/// The result file of a journal's frames.
void write_result(const std::filesystem::path& file, const record::Header& header, record::Journal& journal,
                  const record::Closing& closing);

}  // namespace stillground::testing
