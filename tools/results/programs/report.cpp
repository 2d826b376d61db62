#include <optional>

#include "engine/program/shown_json.hpp"
#include "engine/record/read/result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/results/report.hpp"

using namespace stillground;

namespace {

struct Asked {
  std::vector<std::string> files;
  std::string to;
  results::ReportHead head;
  bool json = false;
  std::optional<UnitSystem> units;
};

void declare(CLI::App& app, Asked& asked) {
  app.add_option("RESULT", asked.files, "finished result files (.h5); several are compared")->required();
  app.add_option("-o,--output", asked.to, "the page, .html; - is standard output")->type_name("FILE");
  app.add_option("--title", asked.head.title, "its title, instead of the scenario's")->type_name("TEXT");
  app.add_option("--by", asked.head.by, "who prepared it and answers for it")->type_name("TEXT");
  app.add_option("--client", asked.head.client, "for whom it is")->type_name("TEXT");
  app.add_option("--date", asked.head.date, "the date that it bears; none is put by itself")->type_name("TEXT");
  app.add_option("--edition", asked.head.edition, "the version that it bears, such as 2 or draft B")->type_name("TEXT");
  program::add_json(app, asked.json);
  program::add_units(app, asked.units);
}

}  // namespace

int main(int argc, char** argv) {
  Asked asked;
  const program::Info info{
      "report", "writes one page about finished runs: verdict, curves, ground, plan, electricity, inputs, cautions",
      "A page to print and sign, of one layout or of several side by side:\n"
      "  stillground report five.h5 seven.h5 -o report.html --by \"A. Miller\" --date 2027-03-01"};
  return program::guarded_main(
      argc, argv, info, [&](CLI::App& app) { declare(app, asked); },
      [&] {
        if (asked.to.empty()) throw InputError("where is the page to be written? Give -o REPORT.html, or -o -");
        if (asked.json && asked.to == "-") throw InputError("only one of -o - and --json can have standard output");
        const std::vector<std::string> names = results::short_names(asked.files);
        std::vector<results::Reported> reports;
        std::optional<UnitSystem> units = asked.units;
        for (std::size_t i = 0; i < asked.files.size(); ++i) {
          const record::read::Result result(asked.files[i]);
          if (!units) units = result.header().units;
          reports.push_back(results::reported(result, asked.files[i], *units));
          reports.back().layout.name = names[i];
        }
        program::deliver(asked.to, results::report_page(reports, asked.head, *units));
        if (asked.json) {
          const present::Json json = results::report_json(reports, asked.head);
          program::deliver("-", present::dump(program::in_system(json, asked.units.value_or(UnitSystem::si))));
        } else if (asked.to != "-") {
          program::deliver("-", results::report_text(reports, *units));
        }
      });
}
