#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "engine/bore/loop_type.hpp"

namespace stillground::validation {

using TableRow = std::map<std::string, std::string>;

inline double number(const TableRow& row, const std::string& name) {
  return std::stod(row.at(name));
}

/// The rows of the reference solution's table with this limit ("wall", "heat") whose loop's name begins so.
std::vector<TableRow> streams_table(const std::string& limit, const std::string& loop);

/// A bore with the row's section and loop, and the films of its flow.
struct SectionOfRow {
  model::Bore bore;
  bore::Films films;
  double ground_conductivity = 0;
};
SectionOfRow section(const TableRow& row);

/// The engine's network of it, its storage of common size: in steady state that may not matter.
bore::Network network(const TableRow& row);

/// Which of the reference solution's legs a stream is; the legs that go down, pass by pass, then those that go up.
std::vector<std::size_t> legs(const std::string& loop);

/// "series crossed, section double 3, 150 m, 1500 W/K".
std::string describe(const TableRow& row);

}  // namespace stillground::validation
