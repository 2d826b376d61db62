#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/where.hpp"
#include "engine/units/quantity.hpp"

namespace stillground::config {

/// A column's head, `name [unit]`.
struct CsvColumn {
  std::string name;
  std::string unit;  ///< empty if none is given
  Place place;
};

/// A table of numbers and words, read whole: the first line that is no comment names the columns, `#` begins a comment
/// line, cells are parted by commas and may stand in quotation marks, blank lines may end the file. LF or CRLF, with or
/// without byte-order mark.
struct Csv {
  std::string file;    ///< for messages
  std::string sha256;  ///< of its bytes
  std::unique_ptr<const std::string> text;
  std::vector<CsvColumn> columns;
  std::vector<int> lines;               ///< of each row in the file
  std::vector<std::string_view> cells;  ///< [row][column], column fastest, without the space around; views into `text`

  std::size_t rows() const { return lines.size(); }
  std::string_view cell(std::size_t row, std::size_t column) const { return cells[row * columns.size() + column]; }

  /// The column's number, if there is one of that name.
  std::optional<std::size_t> find(std::string_view name) const;

  /// The same, or an InputError at `asked` that lists the columns and the nearest.
  std::size_t need(std::string_view name, const Where& asked) const;

  /// Line and column of a cell, with the column's name as key.
  Where where(std::size_t row, std::size_t column) const;

  /// How the column's numbers become SI; InputError at its head if it has no unit or one of another dimension.
  units::Conversion conversion(std::size_t column, units::Dimension dimension) const;

  /// A cell as a finite SI number; InputError at the cell.
  double number(std::size_t row, std::size_t column, const units::Conversion& to_si) const;
};

/// Reads a file that the scenario asks for at `asked`. InputError there if it cannot be read, and at the line in the
/// file if it is not text, has no or repeated column names, or a row with another number of cells.
Csv read_csv(const std::filesystem::path& file, const Where& asked);

}  // namespace stillground::config
