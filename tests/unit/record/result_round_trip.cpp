#include <cmath>
#include <filesystem>
#include <string>

#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/made_run.hpp"
#include "tests/unit/record/same_frames.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;

namespace {

template <class Row>
std::vector<double> column(const std::vector<Row>& rows, double Row::*member) {
  std::vector<double> values;
  for (const Row& row : rows) values.push_back(row.*member);
  return values;
}

read::Result written(const Scratch& scratch, const MadeRun& run) {
  write_made(scratch.folder / "a.h5", run);
  return read::Result(scratch.folder / "a.h5");
}

}  // namespace

TEST_CASE("A result gives back its header", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const read::Result result = written(scratch, run);
  const Header &found = result.header(), &expected = run.header;
  CHECK(found.title == expected.title);
  CHECK(found.scenario_text == expected.scenario_text);
  CHECK(found.method == "march");
  CHECK(found.engine_version == expected.engine_version);
  CHECK(found.build == expected.build);
  CHECK(found.instruction_set == expected.instruction_set);
  CHECK(found.start == expected.start);
  CHECK(found.years == expected.years);
  CHECK(found.step == expected.step);
  CHECK(found.eft_error.step == expected.eft_error.step);
  CHECK(found.eft_error.grid == expected.eft_error.grid);
  CHECK(found.eft_error.refresh == expected.eft_error.refresh);
  CHECK(found.eft_error.total == expected.eft_error.total);
  CHECK(found.group_error == expected.group_error);
  CHECK(found.fields == expected.fields);
  CHECK(found.has_heat_pump);
  CHECK(found.drill_length == expected.drill_length);
  CHECK(found.fluid_heat_capacity == expected.fluid_heat_capacity);
  auto warnings = expected.warnings;  // those that only the march could give come last
  warnings.insert(warnings.end(), run.closing.warnings.begin(), run.closing.warnings.end());
  CHECK(found.warnings == warnings);
  CHECK(found.cautions == expected.cautions);
  CHECK(found.units == expected.units);
  CHECK(found.inputs == expected.inputs);
  CHECK(result.file() == scratch.folder / "a.h5");
}

TEST_CASE("A result gives back its limits", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const read::Result result = written(scratch, run);
  REQUIRE(result.header().limits.size() == run.header.limits.size());
  for (std::size_t i = 0; i < run.header.limits.size(); ++i) {
    const LimitRow &found = result.header().limits[i], &expected = run.header.limits[i];
    CHECK(found.name == expected.name);
    CHECK(found.quantity == expected.quantity);
    CHECK(found.is_least == expected.is_least);
    CHECK(found.over == expected.over);
    CHECK(found.value == Approx(expected.value).epsilon(1e-12));  // degC and back
  }
}

TEST_CASE("A result gives back its grid, layout and materials to the bit", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const read::Result result = written(scratch, run);
  const Header &found = result.header(), &expected = run.header;
  CHECK(found.z_faces == expected.z_faces);
  CHECK(found.z == expected.z);
  CHECK(found.r_faces == expected.r_faces);
  CHECK(found.r == expected.r);
  CHECK(found.conductivity == expected.conductivity);
  CHECK(found.heat_capacity == expected.heat_capacity);
  CHECK(found.groups == expected.groups);
  CHECK(found.active_fraction == expected.active_fraction);
  CHECK(found.grout_storage == expected.grout_storage);
  CHECK(found.fluid_storage_down == expected.fluid_storage_down);
  CHECK(found.fluid_storage_up == expected.fluid_storage_up);
  for (double BoreRow::*member :
       {&BoreRow::x, &BoreRow::y, &BoreRow::top, &BoreRow::depth, &BoreRow::radius, &BoreRow::start}) {
    CHECK(column(found.bores, member) == column(expected.bores, member));
  }
  REQUIRE(found.bores.size() == expected.bores.size());
  for (std::size_t i = 0; i < expected.bores.size(); ++i) CHECK(found.bores[i].group == expected.bores[i].group);
}

TEST_CASE("A result gives back what minutes bring, and where they bring nothing", "[record][result]") {
  const Scratch scratch;
  MadeRun run = made_run({});
  run.closing.minutes = {{272.5, 300.25, 100, 5000}, {std::nan(""), std::nan(""), -1, -1}};
  write_made(scratch.folder / "a.h5", run);
  const auto minutes = read::Result(scratch.folder / "a.h5").minutes();
  REQUIRE(minutes.size() == run.closing.minutes.size());
  REQUIRE(minutes.size() > 1);
  CHECK(minutes.front().eft_least == Approx(272.5).epsilon(1e-14));
  CHECK(minutes.front().eft_most == Approx(300.25).epsilon(1e-14));
  CHECK(minutes.front().hour_least == 100);
  CHECK(minutes.front().hour_most == 5000);
  CHECK(std::isnan(minutes.back().eft_least));
  CHECK(minutes.back().hour_least == -1);
}

TEST_CASE("A result from before minutes were estimated has none", "[record][result]") {
  const Scratch scratch;
  write_made(scratch.folder / "a.h5", made_run({}));
  CHECK(read::Result(scratch.folder / "a.h5").minutes().empty());
}

TEST_CASE("A result gives back its hourly series and balances", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const read::Result result = written(scratch, run);
  REQUIRE(result.hours().size() == 2 * 8760);
  CHECK(same_temperatures(column(result.hours(), &Hour::eft), column(run.hours, &Hour::eft)));
  CHECK(same_temperatures(column(result.hours(), &Hour::lft), column(run.hours, &Hour::lft)));
  for (double Hour::*member : {&Hour::flow, &Hour::heat_to_ground, &Hour::heating, &Hour::cooling, &Hour::power,
                               &Hour::hot_water, &Hour::cooling_direct, &Hour::power_hot_water, &Hour::power_cooling}) {
    CHECK(column(result.hours(), member) == column(run.hours, member));
  }
  for (double YearBalance::*member :
       {&YearBalance::in, &YearBalance::stored, &YearBalance::surface, &YearBalance::deep, &YearBalance::residual}) {
    CHECK(column(result.balances(), member) == column(run.balances, member));
  }
}

TEST_CASE("A result gives back its snapshots in any order", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const read::Result result = written(scratch, run);
  CHECK(result.snapshot_times() == column(run.snapshots, &Snapshot::time));
  REQUIRE(run.snapshots.size() == 25);  // more than two chunks of twelve
  for (const std::size_t s : {24U, 0U, 11U, 12U, 13U, 23U}) {
    const Snapshot found = result.snapshot(s);
    const Snapshot& expected = run.snapshots[s];
    CHECK(found.time == expected.time);
    CHECK(same(found.rise, expected.rise));
    CHECK(same_temperatures(found.undisturbed, expected.undisturbed));
    CHECK(same_temperatures(found.wall_temperature, expected.wall_temperature));
    CHECK(same_temperatures(found.fluid_down, expected.fluid_down));
    CHECK(same_temperatures(found.fluid_up, expected.fluid_up));
    CHECK(same_temperatures(found.grout, expected.grout));
    CHECK(same(found.fluid_heat, expected.fluid_heat));
  }
  CHECK(same(result.steady_rise(), run.closing.steady_rise));
}

TEST_CASE("Yearly fields come back with the means that were recorded", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run({.fields = "yearly"});
  const read::Result result = written(scratch, run);
  CHECK(result.snapshot_times() == std::vector<double>{0, 31536000, 63072000});
  CHECK(same(result.year_mean_rise(0), run.year_means[0].rise));
  CHECK(same(result.year_mean_rise(1), run.year_means[1].rise));
}

TEST_CASE("A result without fields has none, and says so when asked for a mean", "[record][result]") {
  const Scratch scratch;
  const read::Result result = written(scratch, made_run({.fields = "none"}));
  CHECK(result.snapshot_times().empty());
  CHECK(result.steady_rise().empty());
  CHECK_THROWS_WITH(result.year_mean_rise(0), Contains("a.h5: holds no fields"));
}

TEST_CASE("A result gives back its heat pumps' curves", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const auto curves = written(scratch, run).header().cop_curves;
  REQUIRE(curves.size() == 2);
  CHECK(curves[0].duty == "heating");
  CHECK(curves[0].eft == std::vector<double>{268.15, 283.15});
  CHECK(curves[0].cop == std::vector<double>{3.1, 4.25});
  CHECK(curves[1].duty == "cooling");
}

TEST_CASE("A result gives back its plot of land and the sources of its values", "[record][result]") {
  const Scratch scratch;
  const MadeRun run = made_run();
  const auto header = written(scratch, run).header();
  REQUIRE(header.land.size() == 3);
  CHECK(header.land[2].x == 40.25);
  CHECK(header.land[2].y == 30);
  CHECK(header.sources == run.header.sources);
}

TEST_CASE("A result of a field without a heat pump says so", "[record][result]") {
  const Scratch scratch;
  const read::Result result = written(scratch, made_run({.heat_pump = false}));
  CHECK(!result.header().has_heat_pump);
  CHECK(result.hours().front().power == 0);
}

TEST_CASE("A result without limits, warnings and input files is read", "[record][result]") {
  const Scratch scratch;
  MadeRun run = made_run();
  run.header.limits.clear();
  run.header.warnings.clear();
  run.header.inputs.clear();
  run.header.title.clear();
  run.closing.warnings.clear();
  const read::Result result = written(scratch, run);
  CHECK(result.header().limits.empty());
  CHECK(result.header().warnings.empty());
  CHECK(result.header().inputs.empty());
  CHECK(result.header().title.empty());
}

TEST_CASE("A scenario far beyond 64 KB is kept whole", "[record][result]") {
  const Scratch scratch;
  MadeRun run = made_run({.years = 1});
  for (const std::size_t size : {std::size_t{65'536}, std::size_t{100'000}, std::size_t{3'000'000}}) {
    run.header.scenario_text.assign(size, 'x');
    for (std::size_t i = 0; i < size; i += 7) run.header.scenario_text[i] = static_cast<char>('a' + i % 26);
    CHECK(written(scratch, run).header().scenario_text == run.header.scenario_text);
  }
}

TEST_CASE("A build string far beyond 64 KB is kept whole", "[record][result]") {
  const Scratch scratch;
  MadeRun run = made_run({.years = 1});
  run.header.build.assign(100'000, 'y');
  CHECK(written(scratch, run).header().build == run.header.build);
}
