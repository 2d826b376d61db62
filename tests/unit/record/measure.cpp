#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <optional>

#include "engine/record/read/result.hpp"
#include "engine/record/write/result_file.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/made_run.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;

namespace {

template <class Work>
double seconds(Work&& work) {
  const auto before = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - before).count();
}

}  // namespace

// Hidden: it claims nothing. `unit_record "[measure]"` prints what 25 years of 9 groups cost.
TEST_CASE("What 25 years of 9 groups cost to record", "[.][measure]") {
  const Scratch scratch;
  const auto file = scratch.folder / "a.h5";
  const MadeRun run = made_run({.years = 25, .bores = 30, .groups = 9, .nz = 42, .nr = 36});
  fmt::print("journal  {:6.2f} s", seconds([&] { journal_of(file, run); }));
  fmt::print("  {:6.1f} MB\n", static_cast<double>(std::filesystem::file_size(file.string() + ".spool")) / 1e6);
  std::optional<ResultFile> growing;
  fmt::print("add      {:6.2f} s, while the thread packs\n", seconds([&] {
               growing.emplace(file, run.header, run.snapshots.size());
               for (const Snapshot& snapshot : run.snapshots) growing->add(snapshot);
               growing->add(run.hours);
               for (const YearBalance& balance : run.balances) growing->add(balance);
             }));
  fmt::print("finish   {:6.2f} s", seconds([&] { growing->finish(run.closing); }));
  fmt::print("  {:6.1f} MB\n", static_cast<double>(std::filesystem::file_size(file)) / 1e6);
  std::optional<read::Result> result;
  fmt::print("open     {:6.2f} s\n", seconds([&] { result.emplace(file); }));
  fmt::print("fields   {:6.2f} s, every snapshot in turn\n", seconds([&] {
               for (std::size_t s = 0; s < result->snapshot_times().size(); ++s) result->snapshot(s);
             }));
  fmt::print("means    {:6.2f} s, every run-year\n", seconds([&] {
               for (int y = 0; y < 25; ++y) result->year_mean_rise(y);
             }));
}
