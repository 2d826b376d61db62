#include <sys/wait.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "engine/record/journal/journal.hpp"
#include "engine/record/write/result_file.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/made_run.hpp"
#include "tests/unit/record/recorded.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;
namespace fs = std::filesystem;

namespace {

struct Ran {
  int status = -1;
  std::string output;
};

Ran run_program(const std::string& command) {
  Ran ran;
  FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  char buffer[4096];
  while (const std::size_t n = std::fread(buffer, 1, sizeof buffer, pipe)) ran.output.append(buffer, n);
  const int status = ::pclose(pipe);
  ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

std::string contents(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

Ran open_in_xarray(const fs::path& file) {
  return run_program("/usr/bin/python3 " PROJECT_FOLDER "/tests/cli/open_in_xarray.py '" + file.string() + "'");
}

}  // namespace

TEST_CASE("Equal runs give equal bytes", "[record][result]") {
  const Scratch scratch;
  write_made(scratch.folder / "a.h5", made_run());
  write_made(scratch.folder / "b.h5", made_run());
  const std::string first = contents(scratch.folder / "a.h5");
  REQUIRE(first.size() > 100'000);
  CHECK(first == contents(scratch.folder / "b.h5"));
  MadeRun other = made_run();
  other.hours[5].eft += 1e-9;
  write_made(scratch.folder / "b.h5", other);
  CHECK(first != contents(scratch.folder / "b.h5"));
}

TEST_CASE("A run taken up again after an interruption gives equal bytes", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 1, .fields = "none"});
  write_made(scratch.folder / "a.h5", run);
  {
    Journal journal = Journal::create(scratch.folder / "b.h5", run.header);
    journal.append(std::span(run.hours).first(5000));
    journal.checkpoint({});
    journal.append(std::vector<Hour>(100));
  }
  Journal journal = Journal::resume(scratch.folder / "b.h5", run.header);
  journal.append(std::span(run.hours).subspan(recorded(journal).hours.size()));
  for (const YearBalance& balance : run.balances) journal.append(balance);
  write_result(scratch.folder / "b.h5", run.header, journal, run.closing);
  CHECK(contents(scratch.folder / "a.h5") == contents(scratch.folder / "b.h5"));
}

TEST_CASE("However a run's hours are handed over, the bytes are equal", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 2, .fields = "none"});
  std::vector<std::string> files;
  for (const std::size_t at_once : {24U, 8760U, 17520U, 777U}) {
    const auto file = scratch.folder / (std::to_string(at_once) + ".h5");
    ResultFile growing(file, run.header, 0);
    const std::span<const Hour> hours(run.hours);
    for (std::size_t from = 0; from < hours.size(); from += at_once) {
      growing.add(hours.subspan(from, std::min(at_once, hours.size() - from)));
    }
    for (const YearBalance& balance : run.balances) growing.add(balance);
    growing.finish(run.closing);
    files.push_back(contents(file));
  }
  for (const std::string& file : files) CHECK(file == files.front());
}

TEST_CASE("A result that is not finished leaves nothing behind", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  {
    ResultFile growing(scratch.folder / "a.h5", run.header, run.snapshots.size());
    growing.add(run.hours);
    for (const Snapshot& snapshot : run.snapshots) growing.add(snapshot);
    CHECK(fs::exists(scratch.folder / "a.h5.part"));
  }
  CHECK(fs::is_empty(scratch.folder));
}

TEST_CASE("ncdump reads a result's dimensions, variables and units", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  write_made(file, made_run());
  const Ran ran = run_program("ncdump -h '" + file.string() + "'");
  INFO(ran.output);
  CHECK(ran.status == 0);
  for (const char* line :
       {"time = 17520 ;", "snapshot = 25 ;", "group = 2 ;", "z = 6 ;", "r = 5 ;", "bore = 3 ;", "year = 2 ;",
        "double eft(time) ;", "eft:units = \"degC\" ;", "float ground_rise(snapshot, group, z, r) ;",
        "double time_bounds(time, bound) ;", "time:units = \"hours since 2027-07-01 00:00:00\" ;",
        "time:calendar = \"noleap\" ;", "wall_temperature:_FillValue = NaN ;", ":Conventions = \"CF-1.8\" ;",
        ":stillground_format = 2 ;", ":complete = 1 ;"}) {
    CHECK_THAT(ran.output, Contains(line));
  }
  CHECK_THAT(ran.output, !Contains("DIMENSION_LIST"));
}

TEST_CASE("ncdump reads every number of a result", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  const char* fields = GENERATE("monthly", "yearly", "none");
  write_made(file, made_run({.years = 1, .fields = fields}));
  CHECK(run_program("ncdump '" + file.string() + "' > /dev/null").status == 0);
}

TEST_CASE("xarray opens a result without a warning and finds its heat again", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  const char* fields = GENERATE("monthly", "yearly", "none");
  write_made(file, made_run({.fields = fields}));
  const Ran ran = open_in_xarray(file);
  INFO(ran.output);
  CHECK(ran.status == 0);
}

TEST_CASE("The script that opens a result in xarray notices heat that is not there", "[record][result]") {
  const Scratch scratch;
  const fs::path file = scratch.folder / "a.h5";
  MadeRun run = made_run();
  run.balances[1].stored *= 1 + 1e-5;
  write_made(file, run);
  const Ran ran = open_in_xarray(file);
  INFO(ran.output);
  CHECK(ran.status == 1);
  CHECK_THAT(ran.output, Contains("stored"));
}
