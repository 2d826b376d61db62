#include <map>

#include "engine/record/read/result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/eft_view.hpp"
#include "tools/results/method_note.hpp"
#include "tools/results/notices.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  std::string file;
  std::string which = "monthly";
  outputs::Outputs targets;
  const program::Info info{
      "eft", "shows the fluid of a finished run by month, by year, against the limits, and the electricity it took",
      "Months of the last year beside the first, and the picture for the report:\n"
      "  stillground eft library.h5 --plot eft.svg\n"
      "Every hour as a table for other programs:\n"
      "  stillground eft library.h5 --csv hours.csv --table hourly"};
  return program::guarded_main(
      argc, argv, info,
      [&](CLI::App& app) {
        app.add_option("RESULT", file, "a finished result file (.h5)")->required();
        outputs::add_outputs(app, targets);
        app.add_option("--table", which, "what --csv holds: monthly, yearly, duration or hourly")
            ->check(CLI::IsMember({"monthly", "yearly", "duration", "hourly"}))
            ->needs("--csv")
            ->capture_default_str();
      },
      [&] {
        outputs::check_outputs(targets);
        const record::read::Result result(file);
        const results::Source source = results::source_of(result.header(), file);
        const results::FluidSummary summary = results::summarise(result.header(), result.hours(), result.minutes());
        const std::map<std::string, present::Table (*)(const results::FluidSummary&)> tables = {
            {"monthly", results::month_table}, {"yearly", results::year_table}, {"duration", results::duration_table}};
        const auto csv = [&] {
          const bool hourly = which == "hourly";
          std::vector<std::string> notes = {
              source.title, hourly ? "hourly means; where nothing flows eft and lft are the standing fluid's"
                                   : "entering fluid temperature, hours with flow: " + which};
          if (const auto note = results::method_note(source.method); !note.empty()) notes.push_back(note);
          if (hourly) return outputs::CsvTable{results::hour_table(result.header(), result.hours()), notes};
          return outputs::CsvTable{tables.at(which)(summary), notes};
        };
        outputs::deliver(targets, {.units = result.header().units,
                                   .notices = results::notices_of(result.header()),
                                   .text = [&](UnitSystem units) { return results::eft_text(source, summary, units); },
                                   .csv = csv,
                                   .json = [&] { return results::eft_json(source, summary); },
                                   .picture =
                                       [&](const outputs::Drawing& drawing) {
                                         return present::svg(results::eft_figure(source, summary, drawing));
                                       }});
      });
}
