#pragma once

#include <span>
#include <utility>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/write/column.hpp"

/// The parts of a result file, each defined when it is made and written from the frames it comes from.
namespace stillground::record {

/// The hourly series.
class HourColumns {
 public:
  HourColumns(ResultWriter& writer, const Header& header);
  void add(std::span<const Hour> hours);
  void close();  ///< throws std::logic_error unless every hour has come; so do the others'

 private:
  Column<double> time_, bounds_;
  std::vector<std::pair<Column<double>, double Hour::*>> means_;
  std::size_t hours_ = 0;
  std::vector<double> values_;
};

/// The balances of the run-years, and the years themselves.
class BalanceColumns {
 public:
  explicit BalanceColumns(ResultWriter& writer);
  void add(const YearBalance& balance);
  void close();

 private:
  Column<std::int32_t> year_;
  std::vector<std::pair<Column<double>, double YearBalance::*>> sums_;
  std::int32_t years_ = 0;
};

/// Instants.
class SnapshotColumns {
 public:
  explicit SnapshotColumns(ResultWriter& writer);
  void add(const Snapshot& snapshot);
  void close();

 private:
  Column<double> time_;
  Column<float> rise_;
  std::vector<std::pair<Column<double>, std::vector<double> Snapshot::*>> profiles_;
};

/// Grid, layout, groups, single numbers.
void put_header(ResultWriter& writer, const Header& header);

/// What minutes bring, by run-year; `year` is a variable of the file already. Nothing where there is no estimate.
void put_minutes(ResultWriter& writer, const std::vector<MinuteExtremes>& years);

/// The file's own attributes. `complete` is 0: the writer makes it 1 when everything else is there.
void put_attributes(const hdf5::File& file, const Header& header, const Closing& closing);

}  // namespace stillground::record
