#pragma once

#include <functional>
#include <string>

#include "engine/program/program.hpp"
#include "tools/present/json.hpp"

namespace stillground::outputs {

/// Where a tool puts what it found; "-" is standard output, empty is nowhere.
struct Outputs {
  std::string csv;
  std::string plot;
  bool json = false;
};

/// Declares --csv, --plot and --json. A picture's name must end in .svg or .png.
void add_outputs(CLI::App& app, Outputs& outputs);

/// Throws InputError if more than one of them is to go to standard output. Call it before the work.
void check_outputs(const Outputs& outputs);

/// The same findings in every form, each made only when asked for.
struct Findings {
  std::function<std::string()> text;
  std::function<std::string()> csv;
  std::function<present::Json()> json;
  std::function<std::string()> picture;  ///< SVG
};

/// Writes the files, then standard output: the JSON, CSV or picture that was sent there, else the text.
void deliver(const Outputs& outputs, const Findings& findings);

}  // namespace stillground::outputs
