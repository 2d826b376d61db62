#include "tools/outputs/outputs.hpp"

#include <filesystem>

#include "engine/base/errors.hpp"
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
}

void check_outputs(const Outputs& outputs) {
  const int claims = (outputs.csv == "-" ? 1 : 0) + (outputs.plot == "-" ? 1 : 0) + (outputs.json ? 1 : 0);
  if (claims > 1) throw InputError("only one of --csv -, --plot - and --json can have standard output");
}

void deliver(const Outputs& outputs, const Findings& findings) {
  if (!outputs.csv.empty()) program::deliver(outputs.csv, findings.csv());
  if (!outputs.plot.empty()) {
    const std::string picture = findings.picture();
    const bool pixels = std::filesystem::path(outputs.plot).extension() == ".png";
    program::deliver(outputs.plot, pixels ? present::png(picture) : picture);
  }
  if (outputs.json) {
    program::deliver("-", present::dump(findings.json()));
  } else if (outputs.csv != "-" && outputs.plot != "-") {
    program::deliver("-", findings.text());
  }
}

}  // namespace stillground::outputs
