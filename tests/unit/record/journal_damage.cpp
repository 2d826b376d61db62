#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstring>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <thread>

#include "engine/base/errors.hpp"
#include "engine/record/journal/journal.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/file_size_limit.hpp"
#include "tests/unit/record/made_run.hpp"
#include "tests/unit/record/recorded.hpp"
#include "tests/unit/record/same_frames.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;

namespace {

/// A tiny run: the state at each checkpoint is the number of hours before it, and so can be checked.
const MadeRun& tiny() {
  static const MadeRun run = made_run({.years = 1, .bores = 2, .groups = 1, .nz = 4, .nr = 2});
  return run;
}

void checkpoint(Journal& journal, std::uint64_t hours) {
  journal.checkpoint(std::as_bytes(std::span(&hours, 1)));
}

/// Seven hours and a snapshot to each checkpoint.
void append_round(Journal& journal, std::uint64_t round) {
  journal.append(std::span(tiny().hours).subspan(7 * round, 7));
  journal.append(tiny().snapshots[round % tiny().snapshots.size()]);
  journal.append(YearBalance{1.0 * static_cast<double>(round), 2, 3, 4, 5});
  checkpoint(journal, 7 * (round + 1));
}

std::string contents(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Resumes and checks that all that is there is what was appended before one of the checkpoints. Rounds before it;
/// nothing if the journal is refused with an InputError.
std::optional<std::uint64_t> rounds_after_resume(const std::filesystem::path& result) {
  try {
    Journal journal = Journal::resume(result, tiny().header);
    const auto [hours, snapshots, year_means, balances] = recorded(journal);
    std::uint64_t said = 0;
    if (!journal.state().empty()) {
      REQUIRE(journal.state().size() == sizeof said);
      std::memcpy(&said, journal.state().data(), sizeof said);
    }
    REQUIRE(said == hours.size());
    REQUIRE(hours.size() % 7 == 0);
    for (std::size_t i = 0; i < hours.size(); ++i) REQUIRE(hours[i].eft == tiny().hours[i].eft);
    const std::uint64_t rounds = hours.size() / 7;
    REQUIRE(snapshots.size() == rounds);
    for (std::size_t s = 0; s < rounds; ++s) {
      REQUIRE(same(snapshots[s].grout, tiny().snapshots[s % tiny().snapshots.size()].grout));
      REQUIRE(same(snapshots[s].rise, tiny().snapshots[s % tiny().snapshots.size()].rise));
    }
    REQUIRE(balances.size() == rounds);
    return rounds;
  } catch (const InputError&) {
    return std::nullopt;
  }
}

/// Where the journal ends after its identity and after each of three rounds, and its bytes.
struct ThreeRounds {
  std::vector<std::size_t> ends;
  std::string bytes;

  explicit ThreeRounds(const std::filesystem::path& result) {
    const auto file = result.string() + ".spool";
    Journal journal = Journal::create(result, tiny().header);
    ends.push_back(std::filesystem::file_size(file));
    for (std::uint64_t round = 0; round < 3; ++round) {
      append_round(journal, round);
      ends.push_back(std::filesystem::file_size(file));
    }
    bytes = contents(file);
  }
};

/// Offsets from 0 to `size`: all about each end, and every seventh between, which meets every byte of a record's head
/// in one record or another (each offset costs a sync of the disk).
std::vector<std::size_t> offsets(const ThreeRounds& three, std::size_t size) {
  std::vector<std::size_t> chosen;
  for (std::size_t at = 0; at < size; ++at) {
    const bool near = std::any_of(three.ends.begin(), three.ends.end(),
                                  [&](std::size_t end) { return at + 2 >= end && at <= end + 2; });
    if (near || at % 7 == 0) chosen.push_back(at);
  }
  return chosen;
}

}  // namespace

TEST_CASE("A journal cut off at any byte resumes from the last whole checkpoint or is refused", "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  const ThreeRounds three(result);
  for (const std::size_t cut : offsets(three, three.bytes.size() + 1)) {
    std::ofstream(result.string() + ".spool", std::ios::binary) << three.bytes.substr(0, cut);
    const auto rounds = rounds_after_resume(result);
    INFO("cut at " << cut);
    if (cut < three.ends[0]) {
      REQUIRE(!rounds.has_value());
    } else {
      const auto whole = std::upper_bound(three.ends.begin(), three.ends.end(), cut) - three.ends.begin() - 1;
      REQUIRE(rounds == static_cast<std::uint64_t>(whole));
    }
  }
}

TEST_CASE("A journal with any byte changed resumes from a checkpoint before it or is refused", "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  const ThreeRounds three(result);
  for (const std::size_t at : offsets(three, three.bytes.size())) {
    std::string damaged = three.bytes;
    damaged[at] = static_cast<char>(damaged[at] ^ (1 << (at % 8)));
    std::ofstream(result.string() + ".spool", std::ios::binary) << damaged;
    const auto rounds = rounds_after_resume(result);
    INFO("changed at " << at);
    if (at < three.ends[0]) {
      REQUIRE(!rounds.has_value());
    } else {
      const auto whole = std::upper_bound(three.ends.begin(), three.ends.end(), at) - three.ends.begin() - 1;
      REQUIRE(rounds == static_cast<std::uint64_t>(whole));
    }
  }
}

TEST_CASE("A tail of zeros, as a power cut leaves it, is no record", "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  const ThreeRounds three(result);
  std::ofstream(result.string() + ".spool", std::ios::binary) << three.bytes << std::string(4096, '\0');
  CHECK(rounds_after_resume(result) == 3U);
  // The zeros are gone: the next round stands where they stood.
  Journal journal = Journal::resume(result, tiny().header);
  append_round(journal, 3);
  { const Journal done = std::move(journal); }
  CHECK(rounds_after_resume(result) == 4U);
}

TEST_CASE("A checkpoint in the wrong place is not believed", "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  const ThreeRounds three(result);
  // The second round is cut out: every record is whole, but seven hours are missing before the last checkpoint.
  const std::string holed = three.bytes.substr(0, three.ends[1]) + three.bytes.substr(three.ends[2]);
  std::ofstream(result.string() + ".spool", std::ios::binary) << holed;
  CHECK(rounds_after_resume(result) == 1U);
}

TEST_CASE("A file that is no journal is refused", "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  std::ofstream(result.string() + ".spool") << "my notes, several lines of them, none of them a record";
  CHECK_THROWS_AS(Journal::resume(result, tiny().header), InputError);
}

TEST_CASE("A killed process leaves a journal that resumes from a checkpoint", "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  std::uint64_t most = 0;
  for (int kill_after_ms : {5, 15, 30, 60, 90}) {
    const pid_t child = ::fork();
    if (child == 0) {
      Journal journal = Journal::create(result, tiny().header);
      for (std::uint64_t round = 0; round < 1000; ++round) append_round(journal, round);
      ::_exit(0);
    }
    REQUIRE(child > 0);
    std::this_thread::sleep_for(std::chrono::milliseconds(kill_after_ms));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    const auto rounds =
        std::filesystem::exists(result.string() + ".spool") ? rounds_after_resume(result) : std::nullopt;
    if (rounds) most = std::max(most, *rounds);
  }
  CHECK(most > 0);  // at least one child got as far as a checkpoint
}

TEST_CASE("A full disk stops the journal with its name and the reason, and keeps the last checkpoint",
          "[record][journal]") {
  const Scratch scratch;
  const auto result = scratch.folder / "a.h5";
  {
    Journal journal = Journal::create(result, tiny().header);
    append_round(journal, 0);
    const FileSizeLimit limit(std::filesystem::file_size(result.string() + ".spool") + 600);
    try {
      append_round(journal, 1);
      FAIL("the limit did not hold");
    } catch (const SystemError& error) {
      CHECK(error.what() == result.string() + ".spool: cannot be written: File too large");
    }
  }
  CHECK(rounds_after_resume(result) == 1U);
}
