#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/config/context.hpp"
#include "engine/config/csv.hpp"
#include "engine/model/loads.hpp"

namespace stillground::config {

/// The rows of an hourly file that are used: all of them, save those of each 29 February.
struct HourlyRows {
  std::vector<std::size_t> kept;  ///< 8760 n of them
  std::size_t leap_days = 0;      ///< left out
  int first_hour = 0;             ///< hour of the year of the first row
};

/// Decides which rows of an hourly file make whole years of 365 days. A year has 8760 rows, or 8784 with a 29 February,
/// which is left out. If all years of the file have 8784 rows, a leap day is taken from each; if some have, `first_row`
/// must be given and the calendar tells which. Without `first_row` the file begins on 1 January. InputError at the last
/// row where the count fits no whole years, at `asked` where the calendar contradicts it.
HourlyRows hourly_rows(const Csv& csv, const std::optional<Date>& first_row, const Where& asked);

/// A column as hourly means in W. `least` is the smallest value allowed. InputError at the column's head or the cell.
model::HourlySeries hourly_series(const Csv& csv, const HourlyRows& rows, const std::string& column, const Where& asked,
                                  double least);

}  // namespace stillground::config
