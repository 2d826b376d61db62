#pragma once

#include <string>
#include <variant>
#include <vector>

#include "engine/base/fixed.hpp"
#include "engine/base/unit_system.hpp"

namespace stillground::present {

/// What one cell holds. Nothing, and a number that is not finite, is "-" in text, empty in CSV and null in JSON.
using Cell = std::variant<std::monostate, long, double, std::string>;

struct Column {
  std::string name;           ///< for machines: "eft_min"
  std::string units = {};     ///< "degC"; empty for text and pure numbers
  std::string heading = {};   ///< for people: "EFT least"; empty takes the name
  int digits = 2;             ///< after the point, for people; machines get ten significant digits
  bool to_the_right = false;  ///< text goes to the right as numbers do
  bool on_the_map = false;    ///< a coordinate, large or small: machines get six digits after the point instead
};

/// Said once, printed as text, CSV or JSON. Every row has a cell for each column.
struct Table {
  std::vector<Column> columns;
  std::vector<std::vector<Cell>> rows;
};

using stillground::fixed;

/// A finite number of a column as machines get it, without zeros that say nothing.
std::string for_machines(double value, const Column& column);

/// The same figures in the units that people of `system` are shown; columns are kept in the units of units::shown_in.
Table in_system(Table table, UnitSystem system);

/// For a terminal: headings with their units below them, numbers to the right, text to the left, two blanks between the
/// columns, no line longer than its cells ask for.
std::string text(const Table& table);

}  // namespace stillground::present
