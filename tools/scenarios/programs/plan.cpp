#include "tools/scenarios/plan.hpp"

#include "engine/config/read.hpp"
#include "tools/outputs/outputs.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  std::string file;
  outputs::Outputs targets;
  const program::Info info{"plan", "draws a scenario's layout from above and lists its bores",
                           "The table of --csv can serve another scenario as field.positions:\n  stillground plan "
                           "site.yaml --csv bores.csv --plot plan.svg"};
  return program::guarded_main(
      argc, argv, info,
      [&](CLI::App& app) {
        app.add_option("SCENARIO.yaml", file, "the scenario")->type_name("")->required();
        outputs::add_outputs(app, targets);
      },
      [&] {
        outputs::check_outputs(targets);
        const model::Scenario scenario = config::read_scenario(file, targets.units);
        const assembly::Assembly assembly = assembly::assemble(scenario);
        outputs::deliver(
            targets,
            {.units = scenario.units,
             .notices = scenarios::plan_notices(assembly),
             .text = [&](UnitSystem units) { return scenarios::plan_text(assembly, units); },
             .csv =
                 [&] {
                   return outputs::CsvTable{scenarios::plan_table(assembly), scenarios::plan_comments(assembly)};
                 },
             .json = [&] { return scenarios::plan_json(assembly); },
             .picture =
                 [&](const outputs::Drawing& drawing) {
                   return present::svg(scenarios::site_plan(assembly, drawing));
                 }});
      });
}
