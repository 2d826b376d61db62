#include <fmt/format.h>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "engine/app/run_display.hpp"
#include "engine/config/read.hpp"
#include "engine/job/cautions.hpp"
#include "engine/job/run.hpp"
#include "engine/program/notices.hpp"
#include "engine/program/program.hpp"
#include "engine/program/signals.hpp"

namespace stillground::app {

namespace {

namespace fs = std::filesystem;

struct Arguments {
  fs::path scenario;
  fs::path result;
  int threads = 0;
  bool resume = false;
  bool fresh = false;
  std::optional<UnitSystem> units;
  std::string instruction_set;
};

/// Where the result goes.
fs::path result_path(const Arguments& arguments) {
  const fs::path result = arguments.result.empty() ? fs::path(arguments.scenario.stem()) += ".h5" : arguments.result;
  if (result == "-") throw InputError("-o: a result is a file and cannot go to standard output");
  job::refuse_place(result, arguments.scenario, "-o");
  return result;
}

void run_scenario(const Arguments& arguments) {
  const model::Scenario scenario = config::read_scenario(arguments.scenario, arguments.units);
  const fs::path result = result_path(arguments);

  RunDisplay display(scenario.units);
  job::Options options;
  options.result = result;
  options.threads = arguments.threads;
  options.resume = arguments.resume;
  options.fresh = arguments.fresh;
  options.instruction_set = arguments.instruction_set;
  options.warned = [](const std::vector<Warning>& warnings) {
    for (const Warning& warning : warnings) program::warn(warning);
  };
  options.progress = [&](const job::Progress& progress) { display.show(progress); };
  options.listen = program::stop_on_signals;
  const std::vector<Warning> warnings = job::run(scenario, options);
  display.clear();
  program::Notices notices{{}, job::cautions(scenario)};
  for (const Warning& warning : warnings) notices.warnings.push_back(warning.line());
  program::deliver("-", fmt::format("{} is complete{}\n{}", result.string(),
                                    scenario.run.screens() ? ", a screening estimate" : "", program::footer(notices)));
}

}  // namespace

}  // namespace stillground::app

int main(int argc, char** argv) {
  using namespace stillground;
  app::Arguments arguments;
  return program::guarded_main(
      argc, argv,
      {"run", "simulates a scenario and writes its result file",
       "Ctrl-C saves a checkpoint beside the result (RESULT.h5.spool); --resume goes on from there, --fresh "
       "throws it away, and neither is done unasked."},
      [&](CLI::App& app) {
        app.add_option("SCENARIO.yaml", arguments.scenario, "the scenario")->type_name("")->required();
        app.add_option("-o,--output", arguments.result,
                       "the result; otherwise the scenario's name with .h5, in this folder")
            ->type_name("RESULT.h5");
        program::add_threads(app, arguments.threads);
        program::add_units(app, arguments.units);
        auto* resume = app.add_flag("--resume", arguments.resume, "go on from the checkpoint of an interrupted run");
        app.add_flag("--fresh", arguments.fresh, "throw that checkpoint away and start at the beginning")
            ->excludes(resume);
        app.add_option(
               "--instruction-set", arguments.instruction_set,
               "the processor's instructions to march with: baseline, avx2 or avx512; otherwise the widest there "
               "are, or those of the checkpoint. Equal results to the last bit need equal sets")
            ->check(CLI::IsMember({"baseline", "avx2", "avx512"}).description(""))
            ->type_name("SET");
      },
      [&] { app::run_scenario(arguments); });
}
