#include <filesystem>
#include <string>

#include "engine/config/placeholders.hpp"
#include "engine/config/read.hpp"
#include "engine/job/run.hpp"
#include "engine/units/quantity.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/scenarios/sheet.hpp"

using namespace stillground;

namespace {

struct Words {
  std::string waste = "20 %";
  std::string bag;
  std::string fill = "2 bar";
};

double given(const std::string& option, const std::string& text, units::Dimension dimension, double least, double most,
             const char* allowed) {
  Where where;
  where.key = option;
  const double value = units::to_si(text, dimension, where);
  if (value < least || value > most) where.refuse("\"" + text + "\" is out of range (allowed: " + allowed + ")");
  return value;
}

scenarios::Allowances allowances(const Words& words) {
  scenarios::Allowances result;
  result.grout_waste = given("--waste", words.waste, units::Dimension::fraction, 0, 2, "0 to 200 %");
  if (!words.bag.empty()) result.bag = given("--bag", words.bag, units::Dimension::volume, 1e-3, 10, "1 L to 10 m3");
  result.fill = given("--fill", words.fill, units::Dimension::pressure, 0, 2e6, "0 to 20 bar");
  return result;
}

/// .html makes a page; .txt and standard output are text.
bool is_page(const std::string& target) {
  return std::filesystem::path(target).extension() == ".html";
}

std::string wrong_name(const std::string& name) {
  const std::string end = std::filesystem::path(name).extension().string();
  if (name == "-" || end == ".html" || end == ".txt") return "";
  return "\"" + name + "\" ends neither in .html nor in .txt";
}

}  // namespace

int main(int argc, char** argv) {
  std::string file, target;
  bool json = false;
  std::optional<UnitSystem> units;
  Words words;
  const program::Info info{"sheet", "writes what the crew takes to site: metres, pipe, grout, fluid, flushing, tests",
                           "Headers and what is in the building are not counted.\n"
                           "  stillground sheet site.yaml -o sheet.html --bag \"85 L\""};
  return program::guarded_main(
      argc, argv, info,
      [&](CLI::App& app) {
        app.add_option("SCENARIO.yaml", file, "the scenario")->type_name("")->required();
        app.add_option("-o,--output", target,
                       "the sheet, .html or .txt; without it, or with -, text on standard output")
            ->type_name("FILE")
            ->check(wrong_name);
        app.add_option("--waste", words.waste, "grout beside the bores' own volume; 20 % if not given")
            ->type_name("PART");
        app.add_option("--bag", words.bag, "mixed grout that one bag makes, for a count of bags")->type_name("VOLUME");
        app.add_option("--fill", words.fill, "pressure at the surface that the loops are filled to; 2 bar if not given")
            ->type_name("PRESSURE");
        program::add_json(app, json);
        program::add_units(app, units);
      },
      [&] {
        if (json && target == "-") throw InputError("only one of --output - and --json can have standard output");
        const scenarios::Allowances extra = allowances(words);
        if (!target.empty() && target != "-") job::refuse_place(target, file, "--output");
        const model::Scenario scenario = config::read_scenario(file, units);
        config::refuse_placeholders(scenario);
        const assembly::Assembly assembly = assembly::assemble(scenario);
        const scenarios::Sheet sheet = scenarios::sheet(assembly, extra, units.value_or(scenario.units));
        if (!target.empty() && target != "-") {
          program::deliver(target, is_page(target) ? scenarios::sheet_html(sheet) : scenarios::sheet_text(sheet));
        }
        if (json) {
          program::deliver("-", outputs::machine_text(scenarios::sheet_json(assembly, extra), sheet.notices,
                                                      units.value_or(UnitSystem::si)));
        } else if (target.empty() || target == "-") {
          program::deliver("-", scenarios::sheet_text(sheet));
        } else {
          program::deliver("-", target + ": " + sheet.sums + "\n" + program::footer(sheet.notices));
        }
      });
}
