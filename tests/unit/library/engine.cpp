#include <stillground/check.hpp>
#include <stillground/result.hpp>
#include <stillground/run.hpp>
#include <stillground/screening.hpp>
#include <stillground/version.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <span>
#include <sstream>
#include <vector>

#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

/// tests/cli/scenarios/pair.yaml with loads of its own: 4 kW of heating each night (invented).
struct Site : testing::Scratch {
  fs::path file = folder / "pair.yaml";

  Site() {
    fs::copy_file(fs::path(PROJECT_FOLDER) / "tests/cli/scenarios/pair.yaml", file);
    std::ofstream loads(folder / "loads.csv");
    loads << "heating [W],cooling [W]\n";
    for (int n = 0; n < hours_per_year; ++n) loads << (n % 24 < 8 ? 4000 : 0) << ",0\n";
  }
};

std::string bytes(const fs::path& file) {
  std::ostringstream all;
  all << std::ifstream(file, std::ios::binary).rdbuf();
  return all.str();
}

}  // namespace

TEST_CASE("A scenario is read, checked and run, and its result opened, by public headers alone", "[library]") {
  const Site site;
  const Scenario scenario = read_scenario(site.file);
  CHECK(scenario.title() == "Two bores for the tests");
  CHECK(scenario.start() == Date{2027, 7, 1});
  CHECK(scenario.years() == 2);

  const Plan plan = check(scenario);
  CHECK(plan.bores == 2);
  CHECK(plan.active_length == Approx(120));
  CHECK(plan.drill_length == Approx(123));  // and 1.5 m of trench each
  CHECK(plan.nearest_spacing == Approx(6));
  CHECK(plan.heating.peak == Approx(4000));
  CHECK(plan.heating.year == Approx(4000.0 * 8 * 365 * 3600));
  CHECK(plan.cooling.year == 0);
  CHECK(
      (plan.taken.peak > 0 && plan.taken.peak < plan.heating.peak / plan.active_length));  // less the compressor's work
  CHECK(plan.given.peak == 0);

  const fs::path file = site.folder / "pair.h5";
  long told = 0;
  RunOptions options;
  options.progress = [&](const Progress& at) { told += at.hours_total == 2.0 * hours_per_year; };
  const std::vector<Warning> warnings = run(scenario, file, options);
  CHECK(told == 2 * 365);

  const Result result(file);
  CHECK(result.heading().title == scenario.title());
  CHECK(result.heading().method == "march");
  CHECK(result.heading().engine_version == version());
  CHECK(result.heading().scenario == bytes(site.file));
  CHECK(result.heading().warnings.size() == warnings.size());
  CHECK(result.heading().bores.size() == 2);
  REQUIRE(result.hours().size() == 2 * hours_per_year);
  REQUIRE(result.balances().size() == 2);
  double heat = 0;
  for (int n = 0; n < hours_per_year; ++n) heat += 3600 * result.hours()[static_cast<std::size_t>(n)].heat_to_ground;
  CHECK(heat == Approx(result.balances()[0].in).epsilon(1e-6));  // hours are kept in double, sums differ by round-off
  CHECK(heat < 0);
}

TEST_CASE("A year's extremes are those of its hours with flow", "[library]") {
  const Site site;
  const fs::path file = site.folder / "pair.h5";
  run(read_scenario(site.file), file);
  const Result result(file);
  const std::vector<YearExtremes> years = result.extremes();
  REQUIRE(years.size() == 2);
  for (const YearExtremes& year : years) {
    const long first = long{hours_per_year} * (year.year - 1);
    const auto hour = [&](long n) { return result.hours()[static_cast<std::size_t>(n)]; };
    CHECK((hour(year.hour_least).flow > 0 && hour(year.hour_most).flow > 0));
    CHECK(hour(year.hour_least).eft == year.eft_least);
    CHECK(hour(year.hour_most).eft == year.eft_most);
    for (long n = first; n < first + hours_per_year; ++n) {
      if (hour(n).flow > 0 && (hour(n).eft < year.eft_least || hour(n).eft > year.eft_most)) FAIL("hour " << n);
      if (hour(n).flow > 0 && n < year.hour_least && hour(n).eft == year.eft_least) FAIL("not the first: " << n);
    }
  }
  CHECK(years[1].eft_least < years[0].eft_least);  // heat is only taken
}

TEST_CASE("A cancelled run leaves a checkpoint; resumed, it ends with the bytes of an undisturbed one", "[library]") {
  const Site site;
  const Scenario scenario = read_scenario(site.file);
  run(scenario, site.folder / "whole.h5");

  const fs::path file = site.folder / "cut.h5";
  std::atomic<bool> cancel = false;
  RunOptions options;
  options.cancel = &cancel;
  options.progress = [&](const Progress& at) { cancel = at.hours_done >= 24 * 100; };
  CHECK_THROWS_AS(run(scenario, file, options), Interrupted);
  CHECK(!fs::exists(file));
  CHECK(fs::exists(file.string() + ".spool"));

  cancel = false;
  options.progress = nullptr;
  CHECK_THROWS_WITH(run(scenario, file, options), Contains("keeps the checkpoint of an interrupted run"));
  options.resume = true;
  run(scenario, file, options);
  CHECK(bytes(file) == bytes(site.folder / "whole.h5"));
}

TEST_CASE("What is wrong is an InputError with its place and key", "[library]") {
  const Site site;
  std::string text = bytes(site.file);
  const std::string depth = "depth: 60 m";
  std::ofstream(site.folder / "broken.yaml") << text.replace(text.find(depth), depth.size(), "depth: 60 W");
  try {
    read_scenario(site.folder / "broken.yaml");
    FAIL("was read");
  } catch (const InputError& error) {
    CHECK(error.key() == "bore.depth");
    CHECK(error.place().line == 14);
    CHECK(error.place().column == 10);
    CHECK(error.exit_status() == 2);
  }
  CHECK_THROWS_WITH(run(read_scenario(site.file), site.file),
                    Contains("result: ") && Contains("is the scenario itself"));
  CHECK_THROWS_WITH(run(read_scenario(site.file), site.folder / "none" / "x.h5"), Contains("there is no folder"));
  CHECK_THROWS_AS(Result(site.folder / "none.h5"), InputError);
}

TEST_CASE("Variants of a layout are screened together, without a file, on any number of threads", "[library]") {
  const Site site;
  const fs::path cooler = site.folder / "cooler.yaml";
  std::ifstream in(site.file);
  std::string text((std::istreambuf_iterator<char>(in)), {});
  const auto at = text.find("loads.csv");
  REQUIRE(at != std::string::npos);
  text.replace(at, 9, "half.csv");
  std::ofstream(cooler) << text;
  std::ofstream half(site.folder / "half.csv");
  half << "heating [W],cooling [W]\n";
  for (int n = 0; n < hours_per_year; ++n) half << (n % 24 < 8 ? 2000 : 0) << ",0\n";
  half.close();
  const std::vector<Scenario> variants{read_scenario(site.file), read_scenario(cooler)};
  const ScreeningBatch batch(variants.front());
  const auto least = [&](int threads) {
    std::vector<double> found(variants.size(), 1000);
    std::vector<char> whole(variants.size(), 0);
    batch.run(
        variants,
        [&](std::size_t variant, std::span<const Hour> hours) {
          whole[variant] = hours.size() == 8760;  // Catch's assertions are not for other threads
          for (const Hour& hour : hours) {
            if (hour.flow > 0) found[variant] = std::min(found[variant], hour.eft);
          }
        },
        threads);
    CHECK(whole == std::vector<char>(variants.size(), 1));
    return found;
  };
  const auto one = least(1);
  CHECK(one == least(2));
  CHECK(one[0] < one[1]);
}
