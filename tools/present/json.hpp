#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "tools/present/table.hpp"

namespace stillground::present {

/// Keeps the order in which it was filled, so that people can read it too.
using Json = nlohmann::ordered_json;

/// A number to ten significant digits (below that is the noise of kelvin to degC); null if it is not finite.
Json number(double value);

/// {"value": 11.8, "units": "degC"}
Json quantity(double value, const std::string& units);

/// What one cell of a table holds, with its units beside it; text stands alone.
Json single(const Cell& cell, const std::string& units);

/// One member per column: {"run_year": {"units": "1", "values": [1, 2]}, "date": {"values": ["2027-07-01"]}}. Pure
/// numbers have units "1", text has none.
Json columns(const Table& table);

/// The whole object as text with a line end. Bytes that are not UTF-8 (a title may hold anything) become U+FFFD.
std::string dump(const Json& object);

}  // namespace stillground::present
