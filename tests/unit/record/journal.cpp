#include "engine/record/journal/journal.hpp"

#include <cstring>
#include <string>

#include "engine/base/errors.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/made_run.hpp"
#include "tests/unit/record/recorded.hpp"
#include "tests/unit/record/same_frames.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;

namespace {

std::span<const std::byte> bytes_of(const std::string& text) {
  return std::as_bytes(std::span(text));
}

std::string text_of(const std::vector<std::byte>& bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}

}  // namespace

TEST_CASE("A journal gives back every frame as it was appended", "[record][journal]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 1, .fields = "yearly"});
  Journal journal = journal_of(scratch.folder / "a.h5", run);
  const auto [hours, snapshots, year_means, balances] = recorded(journal);
  REQUIRE(hours.size() == run.hours.size());
  CHECK(std::memcmp(hours.data(), run.hours.data(), hours.size() * sizeof(Hour)) == 0);
  REQUIRE(balances.size() == run.balances.size());
  CHECK(std::memcmp(balances.data(), run.balances.data(), balances.size() * sizeof(YearBalance)) == 0);
  REQUIRE(snapshots.size() == run.snapshots.size());
  for (std::size_t s = 0; s < run.snapshots.size(); ++s) {
    const Snapshot& snapshot = snapshots[s];
    CHECK(snapshot.time == run.snapshots[s].time);
    CHECK(same(snapshot.rise, run.snapshots[s].rise));
    CHECK(same(snapshot.undisturbed, run.snapshots[s].undisturbed));
    CHECK(same(snapshot.wall_temperature, run.snapshots[s].wall_temperature));
    CHECK(same(snapshot.fluid_down, run.snapshots[s].fluid_down));
    CHECK(same(snapshot.fluid_up, run.snapshots[s].fluid_up));
    CHECK(same(snapshot.grout, run.snapshots[s].grout));
  }
  REQUIRE(year_means.size() == 1);
  CHECK(same(year_means[0].rise, run.year_means[0].rise));
}

TEST_CASE("A resumed journal goes on from its last checkpoint as if nothing had happened", "[record][journal]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 1});
  {
    Journal journal = Journal::create(scratch.folder / "a.h5", run.header);
    for (std::size_t i = 0; i < 100; i += 25) journal.append(std::span(run.hours).subspan(i, 25));
    journal.append(run.snapshots[0]);
    journal.checkpoint(bytes_of("state at 100"));
    journal.append(std::span(run.hours).subspan(100, 1));  // lost with the process
    journal.append(run.snapshots[1]);
  }
  Journal journal = Journal::resume(scratch.folder / "a.h5", run.header);
  CHECK(text_of(journal.state()) == "state at 100");
  CHECK(recorded(journal).hours.size() == 100);
  CHECK(recorded(journal).snapshots.size() == 1);
  journal.append(std::span(run.hours).subspan(100, 1));
  journal.append(run.snapshots[1]);
  CHECK(recorded(journal).hours.back().eft == run.hours[100].eft);
  CHECK(same(recorded(journal).snapshots[1].rise, run.snapshots[1].rise));
}

TEST_CASE("A journal without a checkpoint resumes at the beginning, with an empty state", "[record][journal]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 1});
  Journal::create(scratch.folder / "a.h5", run.header).append(std::span(run.hours).first(1));
  Journal journal = Journal::resume(scratch.folder / "a.h5", run.header);
  CHECK(journal.state().empty());
  CHECK(recorded(journal).hours.empty());
}

TEST_CASE("A new journal replaces what an earlier run left", "[record][journal]") {
  const Scratch scratch;
  const MadeRun run = made_run({.years = 1});
  journal_of(scratch.folder / "a.h5", run);
  Journal::create(scratch.folder / "a.h5", run.header);
  Journal journal = Journal::resume(scratch.folder / "a.h5", run.header);
  CHECK(journal.state().empty());
  CHECK(recorded(journal).snapshots.empty());
}

TEST_CASE("A look at a journal tells whether work is kept in it and with which instructions it was done",
          "[record][journal]") {
  const Scratch scratch;
  const auto path = scratch.folder / "a.h5";
  CHECK_FALSE(Journal::look(path).has_value());
  const MadeRun run = made_run({.years = 1});
  {
    Journal journal = Journal::create(path, run.header);
    journal.append(std::span(run.hours).first(5));
  }
  REQUIRE(Journal::look(path).has_value());
  CHECK_FALSE(Journal::look(path)->checkpoint);
  CHECK(Journal::look(path)->instruction_set == "baseline");
  Journal::resume(path, run.header).checkpoint(bytes_of("state"));
  CHECK(Journal::look(path)->checkpoint);
  CHECK(text_of(Journal::resume(path, run.header).state()) == "state");  // it was only looked at
}

TEST_CASE("A discarded journal leaves no file", "[record][journal]") {
  const Scratch scratch;
  Journal journal = Journal::create(scratch.folder / "a.h5", made_run({.years = 1}).header);
  CHECK(std::filesystem::exists(scratch.folder / "a.h5.spool"));
  journal.discard();
  CHECK(std::filesystem::is_empty(scratch.folder));
  CHECK_THROWS_AS(Journal::resume(scratch.folder / "a.h5", made_run({.years = 1}).header), InputError);
}

TEST_CASE("A journal is resumed by its own run only, and the message says what differs", "[record][journal]") {
  const Scratch scratch;
  const auto path = scratch.folder / "a.h5";
  const Header header = made_run({.years = 1}).header;
  Journal::create(path, header);
  const auto message = [&](auto change) {
    Header other = header;
    change(other);
    try {
      Journal::resume(path, other);
    } catch (const InputError& error) {
      return std::string(error.what());
    }
    return std::string("resumed");
  };
  CHECK(message([](Header&) {}) == "resumed");
  CHECK_THAT(message([](Header& h) { h.scenario_text += " "; }), Contains("a.h5.spool: ") && Contains("scenario text"));
  CHECK_THAT(message([](Header& h) { h.inputs[1].second[0] = 'c'; }), Contains("input file loads.csv"));
  CHECK_THAT(message([](Header& h) { h.inputs.pop_back(); }), Contains("input file loads.csv (not there now)"));
  CHECK_THAT(message([](Header& h) { h.inputs.push_back({"log.csv", "d"}); }), Contains("log.csv (not there then)"));
  CHECK_THAT(message([](Header& h) { h.engine_version = "0.0.2"; }),
             Contains("engine version (\"0.0.1\" then, \"0.0.2\" now)"));
  CHECK_THAT(message([](Header& h) { h.build = "other"; }), Contains("build") && !Contains("scenario"));
  CHECK_THAT(message([](Header& h) { h.instruction_set = "avx2"; }),
             Contains("instruction set (\"baseline\" then, \"avx2\" now)"));
  CHECK_THAT(message([](Header& h) { h.title = "x"; }), Contains("title"));
  CHECK_THAT(message([](Header& h) { h.start.day = 2; }), Contains("start (\"2027-07-01\" then, \"2027-07-02\" now)"));
  CHECK_THAT(message([](Header& h) { h.years = 3; }), Contains("years"));
  CHECK_THAT(message([](Header& h) { h.step = 900; }), Contains("step in seconds (\"1800\" then, \"900\" now)"));
  CHECK_THAT(message([](Header& h) { h.bores[1].x += 1e-9; }), Contains("layout of the bores"));
  CHECK_THAT(message([](Header& h) { h.z_faces[1] += 1e-9; }), Contains("grid"));
  CHECK_THAT(message([](Header& h) { h.conductivity[0] += 1e-9; }), Contains("materials"));
  CHECK_THAT(message([](Header& h) { h.limits[0].value += 1; }), Contains("limits"));
  CHECK(message([](Header& h) { h.warnings.clear(); }) == "resumed");
}

TEST_CASE("Two runs cannot write one journal at once", "[record][journal]") {
  const Scratch scratch;
  const auto path = scratch.folder / "a.h5";
  const Header header = made_run({.years = 1}).header;
  {
    const Journal first = Journal::create(path, header);
    CHECK_THROWS_WITH(Journal::create(path, header), Contains("a.h5.spool: another run is writing it"));
    CHECK_THROWS_AS(Journal::resume(path, header), InputError);
  }
  CHECK_NOTHROW(Journal::resume(path, header));
}

TEST_CASE("A journal that cannot be created says which file and why", "[record][journal]") {
  const Header header = made_run({.years = 1}).header;
  CHECK_THROWS_WITH(Journal::create("/no/such/folder/a.h5", header),
                    "/no/such/folder/a.h5.spool: cannot be created: No such file or directory");
  CHECK_THROWS_AS(Journal::create("/proc/a.h5", header), SystemError);
}
