#pragma once

#include <string>
#include <vector>

#include "engine/program/notices.hpp"
#include "tools/present/json.hpp"
#include "tools/scenarios/crew_figures.hpp"

/// What the crew takes to site: one page's worth of figures as data, and the forms that it is shown in.
namespace stillground::scenarios {

/// One figure and where the rule behind it comes from.
struct SheetLine {
  std::string what;
  std::string figure;
  std::string rule = {};  ///< "published: ...", "common practice, no source"; empty: follows from the scenario
  bool below = false;     ///< belongs to the line before
};

struct SheetColumn {
  std::string heading;
  bool number = false;  ///< to the right
  int blank = 0;        ///< characters that an empty cell leaves room for, to be written by hand
};

/// An empty cell is to be filled in by hand.
struct SheetGrid {
  std::vector<SheetColumn> columns;
  std::vector<std::vector<std::string>> rows = {};
};

struct SheetSection {
  std::string heading;
  std::vector<SheetLine> lines = {};
  std::vector<std::string> notes = {};
  std::vector<SheetGrid> grids = {};
};

struct Sheet {
  std::string title;
  std::string sums;  ///< what the layout comes to, in a sentence
  program::Notices notices;
  std::vector<SheetSection> sections;
  std::string plan;    ///< SVG
  std::string origin;  ///< program, version, scenario and its digest
};

Sheet sheet(const assembly::Assembly& assembly, const Allowances& allowances, UnitSystem system);

/// For a terminal, a mail or a printer of text: lines of at most 100 columns where the bores' names allow it.
std::string sheet_text(const Sheet& sheet);

/// One page without anything from elsewhere, for a screen of 390 px or more and for A4 and Letter. What the scenario
/// brings is escaped.
std::string sheet_html(const Sheet& sheet);

present::Json sheet_json(const assembly::Assembly& assembly, const Allowances& allowances);

}  // namespace stillground::scenarios
