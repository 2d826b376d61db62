#include <filesystem>
#include <optional>

#include "engine/app/plan.hpp"
#include "engine/config/read.hpp"
#include "engine/job/plan.hpp"
#include "engine/program/program.hpp"

/// Validates a scenario and tells what a run of it would do.
int main(int argc, char** argv) {
  using namespace stillground;
  std::filesystem::path scenario;
  bool json = false;
  int threads = 0;
  std::optional<UnitSystem> units;
  return program::guarded_main(
      argc, argv, {"check", "validates a scenario and tells what would be run", ""},
      [&](CLI::App& app) {
        app.add_option("SCENARIO.yaml", scenario, "the scenario")->type_name("")->required();
        program::add_json(app, json);
        program::add_threads(app, threads);
        program::add_units(app, units);
      },
      [&] {
        const job::Plan plan = job::check(config::read_scenario(scenario, units), threads);
        const UnitSystem machines = units.value_or(UnitSystem::si);
        program::deliver("-", json ? app::plan_json(plan, machines) : app::plan_text(plan, threads));
      });
}
