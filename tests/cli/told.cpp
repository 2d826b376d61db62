#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

/// The pair with a flow that is laminar, which the model warns of before the run and after it.
struct SlowPair : PairCase {
  SlowPair() {
    write_variant("slow.yaml", "per_bore: 0.4 L/s", "per_bore: 0.05 L/s");
    REQUIRE(run({"stillground", "run", "slow.yaml"}, folder).status == 0);
  }
};

const std::string warned = "the flow in the loops is laminar";
const std::string after = "the flow in the loops was laminar in";
const std::string caution = "Pressure: tests are hydrostatic";

}  // namespace

TEST_CASE("What a scenario is warned of is told by every verb that shows its figures, with the cautions") {
  const SlowPair pair;
  using Words = std::vector<std::string>;
  const auto [words, marched] = GENERATE(
      std::pair(Words{"check", "slow.yaml"}, false), std::pair(Words{"plan", "slow.yaml"}, false),
      std::pair(Words{"sheet", "slow.yaml"}, false), std::pair(Words{"run", "slow.yaml", "-o", "again.h5"}, true),
      std::pair(Words{"eft", "slow.h5"}, true), std::pair(Words{"drift", "slow.h5"}, true),
      std::pair(Words{"compare", "slow.h5"}, true), std::pair(Words{"slice", "slow.h5", "--depth", "30"}, true),
      std::pair(Words{"slice", "slow.h5", "--boundary"}, true),
      std::pair(Words{"report", "slow.h5", "-o", "page.html"}, true));
  CAPTURE(words.front());
  Words command = {"stillground"};
  command.insert(command.end(), words.begin(), words.end());
  const Outcome outcome = run(command, pair.folder);
  REQUIRE(outcome.status == 0);
  CHECK_THAT(outcome.out,
             Contains("\nWarnings\n") && Contains(warned) && Contains("\nCautions\n") && Contains(caution));
  if (marched) CHECK_THAT(outcome.out, Contains(after));
  if (words.front() == "run") return;
  command.emplace_back("--json");
  const auto json = nlohmann::json::parse(run(command, pair.folder).out);
  CHECK_THAT(json.at("warnings").dump(), Contains(warned));
  CHECK_THAT(json.at("cautions").dump(), Contains(caution));
  if (marched) CHECK_THAT(json.at("warnings").dump(), Contains(after));
  const std::string verb = words.front();
  if (verb == "check" || verb == "sheet" || verb == "report") return;
  command.back() = "--plot";
  command.emplace_back("-");
  CHECK_THAT(run(command, pair.folder).out, Contains("warning") && Contains("Caution: "));
}

TEST_CASE("Figures are shown in US units where the scenario or the command line asks for them") {
  const PairCase pair;
  pair.write_variant("us.yaml", "title: ", "units: us\ntitle: ");
  REQUIRE(run({"stillground", "run", "pair.yaml"}, pair.folder).status == 0);
  const Outcome marched = run({"stillground", "run", "us.yaml"}, pair.folder);
  REQUIRE(marched.status == 0);
  CHECK_THAT(marched.out, Contains(" degF\n") && !Contains("degC"));
  CHECK_THAT(run({"stillground", "eft", "us.h5"}, pair.folder).out, Contains("degF") && !Contains("degC"));
  CHECK_THAT(run({"stillground", "eft", "us.h5", "--units", "si"}, pair.folder).out,
             Contains("degC") && !Contains("degF"));
  CHECK_THAT(run({"stillground", "drift", "pair.h5", "--units", "us"}, pair.folder).out,
             Contains("degF per decade") && Contains("ft deep") && !Contains(" K"));
  CHECK_THAT(run({"stillground", "compare", "pair.h5", "--units", "us"}, pair.folder).out,
             Contains("to drill                   ft") && !Contains("degC"));
  CHECK_THAT(run({"stillground", "plan", "us.yaml"}, pair.folder).out, Contains("19.69 ft apart at the nearest"));
  for (const char* verb : {"eft", "drift", "compare"}) {
    CAPTURE(verb);
    CHECK_THAT(run({"stillground", verb, "us.h5", "--plot", "-"}, pair.folder).out,
               Contains("[°F]<") && !Contains("°C") && !Contains("degC"));
    CHECK_THAT(run({"stillground", verb, "pair.h5", "--plot", "-"}, pair.folder).out, Contains("[°C]<"));
  }
}

TEST_CASE("Machines are given SI unless they ask for something else") {
  const PairCase pair;
  pair.write_variant("us.yaml", "title: ", "units: us\ntitle: ");
  const auto spacing = [&](const std::vector<std::string>& more) {
    std::vector<std::string> command = {"stillground", "plan", "us.yaml", "--json"};
    command.insert(command.end(), more.begin(), more.end());
    return nlohmann::json::parse(run(command, pair.folder).out).at("nearest_spacing");
  };
  CHECK(spacing({}) == nlohmann::json({{"value", 6.0}, {"units", "m"}}));
  CHECK(spacing({"--units", "us"}).at("units") == "ft");
  CHECK_THAT(run({"stillground", "plan", "us.yaml", "--csv", "-"}, pair.folder).out, Contains("x [m],y [m]"));
  CHECK_THAT(run({"stillground", "plan", "us.yaml", "--csv", "-", "--units", "us"}, pair.folder).out,
             Contains("x [ft],y [ft]"));
}

TEST_CASE("Units that no system has are refused before any work") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "plan", "pair.yaml", "--units", "metric"}, pair.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("\"metric\" is neither si nor us"));
}

TEST_CASE("run warns of what is known beforehand before it sets out") {
  const PairCase pair;
  pair.write_variant("deep.yaml", "top: 1.5 m", "top: 2.5 m");
  const Outcome outcome = run({"stillground", "run", "deep.yaml"}, pair.folder);
  CHECK(outcome.status == 0);
  CHECK_THAT(outcome.err, Contains("deep.yaml:13:8: warning: the header trench is 2.5 m deep"));
}
