#include "engine/record/read/result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/drift_view.hpp"
#include "tools/results/notices.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  std::string file;
  outputs::Outputs targets;
  const program::Info info{
      "drift", "tells whether the ground of a finished run drifts: yearly means, trend, and where it would end",
      "The ground block is the bores' hull, widened by half the median distance to the nearest neighbour, from the "
      "highest top to the lowest toe. The trend is the least-squares slope of the last ten yearly means; below 0.05 K "
      "per "
      "decade it is called level. The final change is the steady state under the last run-year's mean heat."};
  return program::guarded_main(
      argc, argv, info,
      [&](CLI::App& app) {
        app.add_option("RESULT", file, "a finished result file (.h5)")->required();
        outputs::add_outputs(app, targets);
      },
      [&] {
        outputs::check_outputs(targets);
        const record::read::Result result(file);
        const results::Source source = results::source_of(result.header(), file);
        const results::Block block = results::block_of(result.header().bores);
        const results::Drift drift = results::drift_of(result);
        outputs::deliver(targets,
                         {.units = result.header().units,
                          .notices = results::notices_of(result.header()),
                          .text = [&](UnitSystem units) { return results::drift_text(source, block, drift, units); },
                          .csv =
                              [&] {
                                return outputs::CsvTable{
                                    results::drift_table(source, drift),
                                    {source.title, results::verdict(drift, targets.units.value_or(UnitSystem::si))}};
                              },
                          .json = [&] { return results::drift_json(source, block, drift); },
                          .picture =
                              [&](const outputs::Drawing& drawing) {
                                return present::svg(results::drift_figure(source, drift, drawing));
                              }});
      });
}
