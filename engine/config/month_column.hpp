#pragma once

#include <optional>
#include <string_view>

#include "engine/config/context.hpp"
#include "engine/config/csv.hpp"

namespace stillground::config {

/// The month, 1 to 12, that a cell names: "1", "01", "Jan", "January", "2027-01"; none if it cannot be read.
std::optional<int> month_of(std::string_view cell);

/// Looks at the column `month`, where there is one, of a table with a row a month. InputError at the first row that
/// names another month than its place from January to December; a warning where a cell cannot be read.
void check_months(const Csv& csv, Context& context);

}  // namespace stillground::config
