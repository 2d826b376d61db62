#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "engine/config/csv.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::config {

/// A column of instants that may be absent or have empty cells: dates (`start`: 2031-09-01, or 2031-09-01 13:00), or
/// with a unit in its head times after the run's start (`start [hour]`).
class InstantColumn {
 public:
  InstantColumn(const Csv& csv, const model::Run& run, std::string_view name);

  /// Whole hours after the run's start [s], within the run; `otherwise` where the cell is empty. InputError else.
  double seconds(std::size_t row, double otherwise) const;

 private:
  double raw_seconds(std::size_t row, const Where& where) const;

  const Csv& csv_;
  const model::Run& run_;
  std::optional<std::size_t> column_;
  std::optional<units::Conversion> to_si_;
};

}  // namespace stillground::config
