#include <algorithm>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

TEST_CASE("check tells what would be run and leaves nothing behind") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "check", "pair.yaml"}, pair.folder);
  CHECK(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("Two bores for the tests") && Contains("2027-07-01 to 2029-07-01, 2 years") &&
                              Contains("2 bores, 6.00 m apart") && Contains("120.0 m active, 123.0 m to drill") &&
                              Contains("turbulent") && Contains("W/m at the peak, first on 2027-10-08 06:00, ") &&
                              Contains("step, grid and refresh alone: an hour's EFT errs by at most about 0.0") &&
                              Contains("errors of the model and of what the scenario gives come on top") &&
                              Contains("\nNo warnings from the model.\n"));
  CHECK_FALSE(std::filesystem::exists(pair.folder / "pair.h5"));
}

TEST_CASE("check --json says the same to machines, each quantity with its units") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "check", "pair.yaml", "--json"}, pair.folder);
  REQUIRE(outcome.status == 0);
  const auto plan = nlohmann::json::parse(outcome.out);
  CHECK(plan["bores"] == 2);
  CHECK(plan["groups"] == 1);
  CHECK(plan["active_length"]["value"] == Approx(120).epsilon(1e-12));
  CHECK(plan["active_length"]["units"] == "m");
  CHECK(plan["step"]["value"] == 1800);
  // 4 kW for 12 hours on the 120 + 85 days of the heating season.
  CHECK(plan["heating"]["value"] == Approx(4000.0 * 3600 * 12 * 205).epsilon(1e-12));
  CHECK(plan["heating_peak"]["value"] == 4000);
  CHECK(plan["warnings"] == nlohmann::json::array());
  const auto& error = plan["eft_error_estimate"];
  const auto part = [&](const char* name) { return error[name]["value"].get<double>(); };
  CHECK(error["total"]["units"] == "K");
  CHECK_THAT(error["long_name"].get<std::string>(), Contains("step, grid and refresh interval alone"));
  CHECK(part("step") > 0);
  CHECK(part("grid") > 0);
  CHECK(part("refresh") > 0);
  CHECK(part("total") >= std::max({part("step"), part("grid"), part("refresh")}));
  CHECK(part("total") <= part("step") + part("grid") + part("refresh") + 1e-12);
}

TEST_CASE("check refuses what run would refuse, in the same words") {
  const PairCase pair;
  pair.write_variant("wrong.yaml", "depth: 60 m", "depth: 60 W");
  const Outcome checked = run({"stillground", "check", "wrong.yaml"}, pair.folder);
  const Outcome started = run({"stillground", "run", "wrong.yaml"}, pair.folder);
  CHECK(checked.status == 2);
  CHECK(started.status == 2);
  CHECK(checked.err == started.err);
  CHECK_THAT(checked.err, StartsWith("wrong.yaml:14:10: bore.depth: \"60 W\""));
}

// Reference: 4 kW at the COP of the limit of 0 degC and 3 kW at that of 30 degC, of the curves of pair.yaml, by the
// first law; two bores of 60 m. Energies at the COP of the ground's own temperature, which check tells.
TEST_CASE("check tells what each metre of bore carries, at which flow, and when") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "check", "pair.yaml", "--json"}, pair.folder);
  REQUIRE(outcome.status == 0);
  const auto plan = nlohmann::json::parse(outcome.out);
  const auto value = [&](const char* pointer) {
    return plan.at(nlohmann::json::json_pointer(std::string(pointer) + "/value")).get<double>();
  };
  const auto units = [&](const char* pointer) {
    return plan.at(nlohmann::json::json_pointer(std::string(pointer) + "/units")).get<std::string>();
  };
  const double at_limit = 3.1 + (4.3 - 3.1) * 5 / 15;
  CHECK(value("/per_metre/heating_peak") == Approx(4000 * (1 - 1 / at_limit) / 120).epsilon(1e-9));
  CHECK(value("/per_metre/cooling_peak") == Approx(3000 * (1 + 1 / 4.5) / 120).epsilon(1e-9));
  CHECK(units("/per_metre/heating_peak") == "W m-1");
  const double ground = value("/undisturbed");
  const double of_ground = 6.5 - (6.5 - 4.5) * (ground - 10) / 20;
  CHECK(value("/per_metre/cooling_year") == Approx(3.0 * 6 * 100 * (1 + 1 / of_ground) / 120).epsilon(1e-9));
  CHECK(value("/per_metre/heating_year") == Approx(4.0 * 12 * 205 * (1 - 1 / 4.3) / 120).epsilon(1e-9));
  CHECK(units("/per_metre/heating_year") == "kWh m-1");
  const double section = std::acos(-1.0) / 4 * 0.0326 * 0.0326;  // [m2], 40 mm with 3.7 mm of wall
  CHECK(value("/velocity/full") == Approx(0.4e-3 / section).epsilon(1e-9));
  CHECK(value("/velocity/least") == value("/velocity/full"));
  CHECK(units("/velocity/full") == "m s-1");
  // 0.8 L/s of fluid of some 4.0 MJ/(m3 K) [handbooks of propylene glycol at 25 %, from memory: 3.9 to 4.0].
  CHECK(value("/design_difference/heating") == Approx(4000 * (1 - 1 / at_limit) / (0.8e-3 * 3.97e6)).epsilon(0.01));
  CHECK(units("/design_difference/cooling") == "K");
  CHECK(value("/peak_month/heating") == 10);  // the first hour of heating after the start in July is on 8 October
  CHECK(value("/peak_month/cooling") == 7);
  CHECK(plan["peak_hour"]["heating"] == "2027-10-08 06:00");
}

TEST_CASE("check speaks of every figure in the units of the other unit system") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "check", "pair.yaml", "--units", "us"}, pair.folder);
  REQUIRE(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("393.7 ft active") && Contains("gpm a bore") && Contains("ft/s in the pipe") &&
                              Contains("Btu/(h ft)") && Contains("kBtu a year, at most 1.1 ton") &&
                              Contains("32.0 degF") && Contains("Resistances [h ft degF/Btu]"));
  for (const char* word : {" m ", " m,", "degC", " K ", "K;", "kW", "MWh", "L/s", " L ", "m3", "W/m", "kg"}) {
    CHECK_THAT(outcome.out, !Contains(word));
  }
  const Outcome json = run({"stillground", "check", "pair.yaml", "--units", "us", "--json"}, pair.folder);
  const auto plan = nlohmann::json::parse(json.out);
  CHECK(plan["velocity"]["full"]["units"] == "ft/s");
  CHECK(plan["active_length"]["value"] == Approx(120 / 0.3048).epsilon(1e-9));
}

TEST_CASE("What reading a scenario warns of comes in the units that the command line asks for") {
  const PairCase pair;
  pair.write_variant("near.yaml", "spacing: 6 m", "spacing: 2.5 m");
  CHECK_THAT(run({"stillground", "check", "near.yaml"}, pair.folder).out, Contains("the bores stand 2.50 m apart"));
  for (const char* verb : {"check", "plan"}) {
    CHECK_THAT(run({"stillground", verb, "near.yaml", "--units", "us"}, pair.folder).out,
               Contains("the bores stand 8.20 ft apart") && Contains("for 9.84 ft and more"));
  }
}

TEST_CASE("check shows a least flow's own resistances, and phases with their flow") {
  const PairCase pair;
  pair.write_variant("slow.yaml", "runs: with load}", "varies: with load, least: 60 %}");
  const Outcome slow = run({"stillground", "check", "slow.yaml"}, pair.folder);
  CHECK_THAT(slow.out, Contains("at least flow, the ground's ") && Contains("; at least 0.24 L/s a bore, 0.29 m/s"));
  CHECK_THAT(slow.out, !Contains("Phases"));
  std::ofstream(pair.folder / "bores.csv") << "x [m],y [m],start\n0,0,\n6,0,2028-09-01\n";
  pair.write_variant("phases.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: bores.csv");
  const Outcome phases = run({"stillground", "check", "phases.yaml"}, pair.folder);
  CHECK_THAT(phases.out, Contains("from 2027-07-01 00:00  1 bore, 60.0 m; 0.40 L/s in all, 0.40 L/s a bore") &&
                             Contains("from 2028-09-01 00:00  2 bores, 120.0 m; 0.80 L/s in all, 0.40 L/s a bore"));
}

TEST_CASE("check tells the first year's energy apart where loads grow") {
  const PairCase pair;
  pair.write_variant("grows.yaml", "cooling: cooling\n", "cooling: cooling\n  growth: 10 %\n");
  const Outcome outcome = run({"stillground", "check", "grows.yaml"}, pair.folder);
  // 9.84 MWh in the first year, 10.824 MWh in the second.
  CHECK_THAT(outcome.out, Contains("heating         10.3 MWh a year (9.8 MWh in the first), at most 4.4 kW"));
}

TEST_CASE("check says which values a catalogue gave, from where, and that they are no measurement") {
  const PairCase pair;
  pair.write_variant("by_name.yaml", "{material: gneiss, conductivity: 2.9 W/(m K), heat_capacity: 2.2 MJ/(m3 K)}",
                     "{use: sandstone}");
  const Outcome outcome = run({"stillground", "check", "by_name.yaml"}, pair.folder);
  CHECK_THAT(outcome.out, Contains("Values from the catalogues, no measurements") &&
                              Contains("ground layer 2 (sandstone): ") &&
                              Contains("Verify the ground's values by a thermal response test."));
}
