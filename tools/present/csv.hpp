#pragma once

#include <string>
#include <vector>

#include "tools/present/table.hpp"

namespace stillground::present {

/// Comma-separated values in the form the scenarios' own load files have: `#` lines first, then one header line of
/// `name [unit]`, then the rows. Ten significant digits, a point, no thousands separators. Text with a comma, a quote
/// or a line end is quoted as in RFC 4180.
std::string csv(const Table& table, const std::vector<std::string>& comments);

}  // namespace stillground::present
