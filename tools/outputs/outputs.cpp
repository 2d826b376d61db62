#include "tools/outputs/outputs.hpp"

#include <filesystem>
#include <utility>

#include "engine/base/errors.hpp"
#include "engine/program/shown_json.hpp"
#include "tools/present/csv.hpp"
#include "tools/present/png.hpp"

namespace stillground::outputs {

namespace {

std::string wrong_picture_name(const std::string& name) {
  const std::string end = std::filesystem::path(name).extension().string();
  if (name == "-" || end == ".svg" || end == ".png") return "";
  return "\"" + name + "\" ends neither in .svg nor in .png";
}

}  // namespace

void add_outputs(CLI::App& app, Outputs& outputs) {
  app.add_option("--csv", outputs.csv, "write a table of comma-separated values; - is standard output")
      ->type_name("FILE");
  app.add_option("--plot", outputs.plot, "draw a picture, .svg or .png; - is standard output, as SVG")
      ->type_name("FILE")
      ->check(wrong_picture_name);
  program::add_json(app, outputs.json);
  program::add_units(app, outputs.units);
}

void check_outputs(const Outputs& outputs) {
  const int claims = (outputs.csv == "-" ? 1 : 0) + (outputs.plot == "-" ? 1 : 0) + (outputs.json ? 1 : 0);
  if (claims > 1) throw InputError("only one of --csv -, --plot - and --json can have standard output");
}

namespace {

std::string for_tables(const Findings& findings, UnitSystem system) {
  CsvTable made = findings.csv();
  for (const std::string& warning : findings.notices.warnings) made.comments.push_back("warning: " + warning);
  return present::csv(present::in_system(std::move(made.table), system), made.comments);
}

}  // namespace

std::string machine_text(present::Json figures, const program::Notices& notices, UnitSystem system) {
  present::Json object = program::in_system(std::move(figures), system);
  object["warnings"] = notices.warnings;
  object["cautions"] = notices.cautions;
  return present::dump(object);
}

void deliver(const Outputs& outputs, const Findings& findings) {
  const UnitSystem people = outputs.units.value_or(findings.units);
  const UnitSystem machines = outputs.units.value_or(UnitSystem::si);
  if (!outputs.csv.empty()) program::deliver(outputs.csv, for_tables(findings, machines));
  if (!outputs.plot.empty()) {
    const std::string picture = findings.picture({people, program::footnotes(findings.notices)});
    const bool pixels = std::filesystem::path(outputs.plot).extension() == ".png";
    program::deliver(outputs.plot, pixels ? present::png(picture) : picture);
  }
  if (outputs.json) {
    program::deliver("-", machine_text(findings.json(), findings.notices, machines));
  } else if (outputs.csv != "-" && outputs.plot != "-") {
    program::deliver("-", findings.text(people) + program::footer(findings.notices));
  }
}

}  // namespace stillground::outputs
