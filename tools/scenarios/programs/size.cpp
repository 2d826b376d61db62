#include <unistd.h>

#include <fmt/format.h>

#include "engine/program/signals.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/svg.hpp"
#include "tools/scenarios/sizing_view.hpp"

using namespace stillground;
using scenarios::Varied;

namespace {

const std::map<std::string, Varied> words{
    {"depth", Varied::depth}, {"spacing", Varied::spacing}, {"count", Varied::count}};

struct Arguments {
  scenarios::VaryRequest request;
  std::string vary;
  int threads = 0;
  outputs::Outputs targets;
};

void declare(CLI::App& app, Arguments& given) {
  scenarios::VaryRequest& request = given.request;
  app.add_option("SCENARIO.yaml", request.scenario, "the scenario")->type_name("")->required();
  app.add_option("--vary", given.vary, "what to find the least of")
      ->type_name("depth|spacing|count")
      ->check(CLI::Validator(
          [](const std::string& word) {
            return words.contains(word) ? std::string() : "\"" + word + "\" is none of depth, spacing, count";
          },
          ""));
  app.add_option("--from", request.from, "least value; half the scenario's own if absent")->type_name("VALUE");
  app.add_option("--to", request.to, "greatest value; twice the scenario's own if absent")->type_name("VALUE");
  app.add_option("--step", request.step, "values are whole multiples of it: \"0.1 m\", \"5 ft\", 2 (bores)")
      ->type_name("STEP");
  auto* list = app.add_option("--values", request.values, "a list instead: \"90 m, 105 m, 120 m\"")->type_name("LIST");
  for (const char* other : {"--from", "--to", "--step"}) list->excludes(app.get_option(other));
  auto* land = app.add_option("--within", request.land, "outline of a plot of land that counts fill, x [m],y [m]")
                   ->type_name("PLOT.csv");
  app.add_option("--setback", request.setback, "of every bore from that outline; 3 m if absent")
      ->type_name("LENGTH")
      ->needs(land);
  program::add_threads(app, given.threads);
  outputs::add_outputs(app, given.targets);
}

/// On a terminal, what is looked at, one line over the other.
void show(const std::string& text) {
  if (::isatty(STDERR_FILENO) != 0) fmt::print(stderr, "\r\x1b[K{}", text);
}

scenarios::Sized sized(const Arguments& given) {
  scenarios::Sized result{
      .what = given.request.what, .variation = scenarios::variation_of(given.request), .sizing = {}, .scenario = {}};
  const std::atomic<bool>& stop = program::stop_on_signals();
  result.sizing = scenarios::find_least(result.variation, {.threads = given.threads, .stop = &stop, .began = show});
  show("");
  const std::size_t last = result.variation.values.size() - 1;
  result.scenario = result.variation.scenario(result.sizing.answer.value_or(last));
  return result;
}

}  // namespace

int main(int argc, char** argv) {
  Arguments given;
  const program::Info info{"size", "finds the least depth, spacing or count of bores that keeps all limits",
                           "The answer is a march that keeps the limits, the next smaller one a march that does not:\n"
                           "  stillground size site.yaml --vary depth --from \"80 m\" --to \"160 m\"\n"
                           "  stillground size site.yaml --vary count --within plot.csv"};
  return program::guarded_main(
      argc, argv, info, [&](CLI::App& app) { declare(app, given); },
      [&] {
        outputs::check_outputs(given.targets);
        if (given.vary.empty()) throw InputError("--vary is needed: depth, spacing or count");
        given.request.what = words.at(given.vary);
        given.request.units = given.targets.units;
        const scenarios::Sized found = sized(given);
        outputs::deliver(given.targets,
                         {.units = found.scenario.units,
                          .notices = scenarios::sizing_notices(found),
                          .text = [&](UnitSystem units) { return scenarios::sizing_text(found, units); },
                          .csv =
                              [&] {
                                return outputs::CsvTable{scenarios::looks_table(found), {found.scenario.title}};
                              },
                          .json = [&] { return scenarios::sizing_json(found); },
                          .picture =
                              [&](const outputs::Drawing& drawing) {
                                return present::svg(scenarios::sizing_figure(found, drawing.units, drawing.footnotes));
                              }});
      });
}
