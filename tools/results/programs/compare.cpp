#include "engine/record/read/result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/csv.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/compare_view.hpp"

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
        for (std::size_t i = 0; i < files.size(); ++i) {
          layouts.push_back(results::layout_of(record::read::Result(files[i])));
          layouts.back().name = names[i];
        }
        outputs::deliver(targets, {[&] { return results::compare_text(layouts); },
                                   [&] {
                                     return present::csv(
                                         results::compare_table(layouts),
                                         {"layouts side by side; EFT: hourly means of the hours with flow"});
                                   },
                                   [&] { return results::compare_json(layouts); },
                                   [&] { return present::svg(results::compare_figure(layouts)); }});
      });
}
