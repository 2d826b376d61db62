#include <chrono>
#include <csignal>
#include <fstream>
#include <sstream>
#include <thread>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;
namespace fs = std::filesystem;

namespace {

using Clock = std::chrono::steady_clock;

/// The pair of bores with its heating times `heating` and its cooling times `cooling`, as `run.yaml`, a march for two
/// years, and `screened.yaml`.
struct Overloaded : PairCase {
  Overloaded(int heating, int cooling) {
    std::istringstream loads(bytes(folder / "loads.csv"));
    std::ofstream more(folder / "more.csv");
    std::string line;
    std::getline(loads, line);
    more << line << '\n';
    while (std::getline(loads, line)) {
      double heats = 0, cools = 0;
      char comma = 0;
      std::istringstream(line) >> heats >> comma >> cools;
      more << heats * heating << ',' << cools * cooling << '\n';
    }
    write_variant("run.yaml", "loads.csv", "more.csv");
    write_variant("screened.yaml", "loads.csv", "more.csv");
    std::string text = bytes(folder / "screened.yaml");
    text.replace(text.find("years: 2}"), 9, "years: 20, method: screening}");
    std::ofstream(folder / "screened.yaml") << text;
  }

  /// Files but those of the test itself.
  std::vector<std::string> left() const {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder)) {
      const std::string name = entry.path().filename().string();
      if (!name.ends_with(".yaml") && !name.ends_with(".csv") && !name.starts_with('.')) names.push_back(name);
    }
    return names;
  }
};

void check_stopped(const Overloaded& pair, const std::string& scenario) {
  const auto before = Clock::now();
  const Outcome outcome = run({"stillground", "run", scenario}, pair.folder);
  INFO(outcome.err);
  CHECK(outcome.status == 3);
  CHECK_THAT(outcome.err, Contains("stopped at 20") && Contains("degC") && Contains("no result is written") &&
                              Contains("W per metre of bore (usual: up to 70): are the loads in W under a head that "
                                       "says kW"));
  CHECK_THAT(outcome.err, !Contains("memory"));
  CHECK_THAT(outcome.out, !Contains("complete"));
  CHECK(pair.left().empty());
  CHECK(Clock::now() - before < std::chrono::seconds(60));  // it takes one or two
}

}  // namespace

TEST_CASE(
    "Loads far beyond the bores stop march and screening on the first such day, with the cause, and leave nothing") {
  for (const int heating : {50, 1000}) {
    const Overloaded pair(heating, 1);
    check_stopped(pair, "run.yaml");
    check_stopped(pair, "run.yaml");  // nothing is in the next run's way
    check_stopped(pair, "screened.yaml");
    CHECK(run({"stillground", "check", "run.yaml"}, pair.folder).status == 0);
    CHECK(run({"stillground", "check", "screened.yaml"}, pair.folder).status == 0);
  }
}

TEST_CASE("A cooling COP that is too steep for absurd loads says that it is the loads") {
  const Overloaded pair(1, 1000);
  for (const char* scenario : {"run.yaml", "screened.yaml"}) {
    const Outcome outcome = run({"stillground", "run", scenario}, pair.folder);
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, Contains("heat_pump.cooling_cop: falls so steeply") &&
                                Contains("the curve may be right and the loads too large") &&
                                Contains("W per metre of bore"));
  }
}

TEST_CASE("A signal ends a run at once while it is still being prepared, and a screening within a second") {
  const PairCase pair;
  // Long to prepare: thousands of bores, each a group of its own.
  pair.write_variant("large.yaml", "rows: 1, columns: 2, spacing: 6 m", "rows: 90, columns: 100, spacing: 6 m");
  std::string text = bytes(pair.folder / "large.yaml");
  for (const char* method : {"march", "screening"}) {
    std::ofstream(pair.folder / "large.yaml")
        << text.substr(0, text.find("years: 2}")) << "years: 25, groups: merged, method: " << method << "}\n";
    Process process({"stillground", "run", "large.yaml"}, pair.folder);
    std::this_thread::sleep_for(std::chrono::milliseconds(700));
    process.send(SIGTERM);
    const auto asked = Clock::now();
    const Outcome outcome = process.wait();
    CHECK(outcome.status == 128 + SIGTERM);
    CHECK(Clock::now() - asked < std::chrono::seconds(1));
    CHECK_FALSE(fs::exists(pair.folder / "large.h5"));
    CHECK_FALSE(fs::exists(pair.folder / "large.h5.part"));
  }
}
