#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "engine/program/notices.hpp"
#include "engine/program/program.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"

namespace stillground::outputs {

/// Where a tool puts what it found; "-" is standard output, empty is nowhere.
struct Outputs {
  std::string csv;
  std::string plot;
  bool json = false;
  std::optional<UnitSystem> units = {};  ///< as asked for on the command line
};

/// Declares --csv, --plot, --json and --units. A picture's name must end in .svg or .png.
void add_outputs(CLI::App& app, Outputs& outputs);

/// Throws InputError if more than one of them is to go to standard output. Call it before the work.
void check_outputs(const Outputs& outputs);

/// How a picture is to be drawn.
struct Drawing {
  UnitSystem units = UnitSystem::si;
  std::vector<std::string> footnotes;  ///< what limits its figures, a line each
};

/// A table for other programs, with the `#` lines above it.
struct CsvTable {
  present::Table table;
  std::vector<std::string> comments;
};

/// The same findings in every form, each made only when asked for. Figures of `csv` and `json` are SI; what limits them
/// need not be said in any form: deliver adds it to each.
struct Findings {
  UnitSystem units = UnitSystem::si;  ///< in which the scenario wants people to be shown figures
  program::Notices notices;
  std::function<std::string(UnitSystem)> text;
  std::function<CsvTable()> csv;
  std::function<present::Json()> json;
  std::function<std::string(const Drawing&)> picture;  ///< SVG
};

/// What --json prints: the figures in the units of `system`, with what limits them.
std::string machine_text(present::Json figures, const program::Notices& notices, UnitSystem system);

/// Writes the files, then standard output: the JSON, CSV or picture that was sent there, else the text. Text and
/// pictures are in the units of --units, else in the scenario's; CSV and JSON stay SI without --units.
void deliver(const Outputs& outputs, const Findings& findings);

}  // namespace stillground::outputs
