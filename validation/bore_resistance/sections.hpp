#pragma once

#include <map>
#include <string>

#include "engine/bore/section.hpp"

namespace stillground::validation {

/// A row of a reference table.
using TableRow = std::map<std::string, std::string>;

inline double number(const TableRow& row, const std::string& name) {
  return std::stod(row.at(name));
}

/// The cross-section that a row of bore_resistance.csv describes.
bore::BoreSection single_u(const TableRow& row);

/// The same of bore_resistance_double.csv: four pipes on a circle, 90 degrees apart.
bore::BoreSection double_u(const TableRow& row);

/// "r_b 75 mm, legs 74 mm apart, grout 1.5, ground 2, leg 0.08".
std::string describe(const TableRow& row);

}  // namespace stillground::validation
