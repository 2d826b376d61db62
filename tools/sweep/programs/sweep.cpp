#include <fmt/format.h>

#include "engine/program/program.hpp"
#include "engine/program/shown_json.hpp"
#include "engine/program/signals.hpp"
#include "tools/sweep/command.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  sweep::Command command;
  const program::Info info{
      "sweep", "computes many variants of a scenario and ranks them",
      "A plan names a scenario, the keys to vary and their values:\n"
      "  scenario: site.yaml\n"
      "  vary:\n"
      "    field.grid.spacing: [5 m, 6 m, 7 m]\n"
      "    bore.depth: {from: 90 m, to: 150 m, step: 15 m}\n"
      "Stopped at any moment, the same command goes on. Many machines may share the folder: --list counts the points, "
      "--point K computes one, --gather makes the summary."};
  return program::guarded_main(
      argc, argv, info,
      [&](CLI::App& app) {
        app.add_option("PLAN.yaml", command.plan, "the plan")->type_name("")->required();
        app.add_option("-o,--output", command.folder, "the folder of the summary, the pictures and the results")
            ->type_name("FOLDER");
        auto* point =
            app.add_option("--point", command.point, "compute point K alone, or what is next for it")->type_name("K");
        auto* list = app.add_flag("--list", command.list, "count the points and name them; with -o, how they stand");
        auto* gather =
            app.add_flag("--gather", command.gather, "summarise what is in the folder, and say what is missing");
        point->excludes(list)->excludes(gather);
        list->excludes(gather);
        program::add_threads(app, command.threads);
        program::add_json(app, command.json);
        program::add_units(app, command.units);
      },
      [&] { sweep::execute(command); });
}
