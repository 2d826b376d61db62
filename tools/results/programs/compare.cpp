#include "engine/record/read/result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/compare_view.hpp"
#include "tools/results/notices.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  std::vector<std::string> files;
  outputs::Outputs targets;
  const program::Info info{
      "compare", "puts the layouts of several finished runs side by side",
      "Two spacings of the same field:\n  stillground compare five.h5 seven.h5 --plot spacings.svg"};
  return program::guarded_main(
      argc, argv, info,
      [&](CLI::App& app) {
        app.add_option("RESULT", files, "finished result files (.h5)")->required();
        outputs::add_outputs(app, targets);
      },
      [&] {
        outputs::check_outputs(targets);
        const std::vector<std::string> names = results::short_names(files);
        std::vector<results::Layout> layouts;
        std::vector<std::pair<std::string, program::Notices>> notices;
        UnitSystem units = UnitSystem::si;
        for (std::size_t i = 0; i < files.size(); ++i) {
          const record::read::Result result(files[i]);
          layouts.push_back(results::layout_of(result));
          layouts.back().name = names[i];
          notices.emplace_back(names[i], layouts.back().notices);
          if (i == 0) units = result.header().units;
        }
        const auto csv = [&] {
          return outputs::CsvTable{results::compare_table(layouts),
                                   {"layouts side by side; EFT: hourly means of the hours with flow"}};
        };
        outputs::deliver(targets, {.units = units,
                                   .notices = results::notices_of(notices),
                                   .text = [&](UnitSystem system) { return results::compare_text(layouts, system); },
                                   .csv = csv,
                                   .json = [&] { return results::compare_json(layouts); },
                                   .picture =
                                       [&](const outputs::Drawing& drawing) {
                                         return present::svg(results::compare_figure(layouts, drawing));
                                       }});
      });
}
