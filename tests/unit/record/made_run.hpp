#pragma once

#include <filesystem>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/journal/journal.hpp"

namespace stillground::testing {

/// A run that nobody marched: invented numbers of the right shapes, the same at every call.
struct MadeRun {
  record::Header header;
  std::vector<record::Hour> hours;
  std::vector<record::Snapshot> snapshots;
  std::vector<record::YearMean> year_means;
  std::vector<record::YearBalance> balances;
  record::Closing closing;
};

struct MadeSize {
  int years = 2;
  Date start = {2027, 7, 1};
  const char* fields = "monthly";
  int bores = 3;  ///< the last one stands alone in its group, the others share the remaining groups in turn
  int groups = 2;
  std::size_t nz = 6;
  std::size_t nr = 5;
  bool heat_pump = true;
};

/// Snapshots stand at the start, at each month's or run-year's end and at the end; the balances' stored heat is that of
/// the fields.
MadeRun made_run(const MadeSize& size = {});

/// Heat that ground, grout and fluid hold more at `to` than at `from` [J], summed over all bores.
double stored_between(const record::Header& header, const record::Snapshot& from, const record::Snapshot& to);

/// All of the run in a new journal beside `result`, with a checkpoint at its end.
record::Journal journal_of(const std::filesystem::path& result, const MadeRun& run);

/// Writes the run's result file, leaving no journal.
void write_made(const std::filesystem::path& result, const MadeRun& run);

}  // namespace stillground::testing
