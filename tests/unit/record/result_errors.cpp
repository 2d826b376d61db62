#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "engine/base/errors.hpp"
#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/hdf5/file.hpp"
#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/file_size_limit.hpp"
#include "tests/unit/record/in_child.hpp"
#include "tests/unit/record/made_run.hpp"
#include "tests/unit/record/recorded.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;
namespace fs = std::filesystem;

namespace {

std::string contents(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// The message with which a file is refused; "read" if it is not.
std::string refusal(const fs::path& file) {
  try {
    const read::Result result(file);
    for (std::size_t s = 0; s < result.snapshot_times().size(); ++s) result.snapshot(s);
    result.steady_rise();
    return "read";
  } catch (const InputError& error) {
    return error.what();
  }
}

/// An HDF5 file of somebody's with the two attributes by which a result is known.
void write_stranger(const fs::path& path, int format, int complete) {
  hdf5::File file = hdf5::File::create(path);
  hdf5::write_number<std::int32_t>(file.id(), "stillground_format", format);
  hdf5::write_number<std::int32_t>(file.id(), "complete", complete);
  file.close();
}

}  // namespace

TEST_CASE("What is not a result is refused by its name", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  CHECK(refusal(file) == file.string() + ": does not exist");
  CHECK(refusal(scratch.folder) == scratch.folder.string() + ": is not a file");
  std::ofstream(file) << "not HDF5";
  CHECK_THAT(refusal(file), Contains("a.h5: is not a result file"));
  { hdf5::File::create(file).close(); }
  CHECK(refusal(file) == file.string() + ": is not a result file of stillground");
}

TEST_CASE("A result of a newer format, or one that is not complete, is refused", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  write_stranger(file, 3, 1);
  CHECK(refusal(file) == file.string() + ": has format 3; this version reads 1 to 2");
  write_stranger(file, 1, 0);
  CHECK(refusal(file) == file.string() + ": is not complete: the run that wrote it did not finish");
  write_stranger(file, 1, 1);
  CHECK_THAT(refusal(file), Contains("a.h5: cannot be read: attribute title is missing"));
}

TEST_CASE("A result cut short is refused, not read as zeros", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  write_made(file, made_run({.years = 1}));
  const std::string whole = contents(file);
  for (const double part : {0.001, 0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.9999}) {
    const auto size = static_cast<std::size_t>(part * static_cast<double>(whole.size()));
    std::ofstream(file, std::ios::binary) << whole.substr(0, size);
    INFO("cut to " << size << " of " << whole.size());
    CHECK_THAT(in_child([&] { return refusal(file); }), StartsWith(file.string() + ": "));
  }
}

TEST_CASE("A damaged result is read or refused, never a crash", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  write_made(file, made_run({.years = 1}));
  const std::string whole = contents(file);
  int refused = 0;
  for (std::size_t i = 0; i < 400; ++i) {
    std::string damaged = whole;
    const std::size_t at = i < 200 ? i * 7 : (i * 2654435761U) % whole.size();
    damaged[at] = static_cast<char>(damaged[at] ^ (1 << (i % 8)));
    std::ofstream(file, std::ios::binary) << damaged;
    const std::string answer = in_child([&] { return refusal(file); });
    INFO("changed at " << at);
    CHECK_THAT(answer, Equals("read") || StartsWith(file.string() + ": "));
    refused += answer != "read";
  }
  CHECK(refused > 0);
}

TEST_CASE("A result that cannot be written leaves nothing behind and says why", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 1});
  Journal journal = journal_of(scratch.folder / "a.h5", run);
  CHECK_THROWS_WITH(write_result("/no/such/folder/a.h5", run.header, journal, run.closing),
                    "/no/such/folder/a.h5: cannot be created: No such file or directory");
  CHECK_THROWS_AS(write_result("/proc/a.h5", run.header, journal, run.closing), SystemError);
  fs::create_directory(scratch.folder / "b.h5");
  CHECK_THROWS_AS(write_result(scratch.folder / "b.h5", run.header, journal, run.closing), SystemError);
  CHECK(!fs::exists(scratch.folder / "b.h5.part"));
  if (::geteuid() != 0) {  // to the superuser every folder is writable
    fs::create_directory(scratch.folder / "shut");
    fs::permissions(scratch.folder / "shut", fs::perms::owner_read | fs::perms::owner_exec);
    CHECK_THROWS_WITH(write_result(scratch.folder / "shut" / "a.h5", run.header, journal, run.closing),
                      Contains("shut/a.h5: cannot be created: Permission denied"));
  }
}

TEST_CASE("A disk that fills up at any moment leaves the old result as it was", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  const MadeRun run = made_run({.years = 1});
  Journal journal = journal_of(file, run);
  write_result(file, run.header, journal, run.closing);
  const std::string before = contents(file);
  for (const double part : {0.0, 0.0005, 0.01, 0.1, 0.3, 0.5, 0.8, 0.95, 0.999}) {
    const auto bytes = static_cast<rlim_t>(part * static_cast<double>(before.size()));
    INFO("limit at " << bytes << " of " << before.size());
    const std::string message = in_child([&]() -> std::string {
      const FileSizeLimit limit(bytes);
      try {
        write_result(file, run.header, journal, run.closing);
      } catch (const SystemError& error) {
        return error.what();
      }
      return "written";
    });
    CHECK_THAT(message, StartsWith(file.string() + ": ") && Contains("File too large"));
    CHECK(contents(file) == before);
    CHECK(!fs::exists(file.string() + ".part"));
  }
}

TEST_CASE("A run whose frames do not fit its header is our own mistake, and writes nothing", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  MadeRun run = made_run({.years = 1});
  run.hours.pop_back();
  Journal journal = journal_of(file, run);
  CHECK_THROWS_AS(write_result(file, run.header, journal, run.closing), std::logic_error);
  CHECK(!fs::exists(file));
  CHECK(!fs::exists(file.string() + ".part"));
}
