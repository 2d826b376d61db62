#pragma once

#include <span>
#include <vector>

#include "engine/record/schema.hpp"
#include "engine/record/write/result_writer.hpp"

namespace stillground::record {

/// One variable, written row by row (indices of its first dimension): rows are gathered until they fill its chunks, so
/// that every chunk is packed once and never read back. T is double, float or std::int32_t. Temperatures come in
/// kelvin.
template <class T>
class Column {
 public:
  /// Defines the variable in the writer, which must outlive the column.
  Column(ResultWriter& writer, const schema::Variable& variable);

  /// Whole rows, one or more. Throws std::logic_error if they are no whole rows or more than the variable holds.
  void add(std::span<const T> rows);

  /// Writes what is left; throws std::logic_error unless every row has come.
  void close();

 private:
  hsize_t at_once() const;  // rows that are written together
  void write(hsize_t rows);
  void write_tiles(hsize_t rows);

  hdf5::Packer& packer_;
  hdf5::Dataset dataset_;
  hdf5::Shape shape_, chunk_;  // chunk_ is empty if the variable is in one piece
  T offset_;                   // what a value of ours is above the file's
  T gap_;                      // what stands beyond the variable's edges in its last chunks
  std::size_t row_ = 1;        // values of a row
  hsize_t first_ = 0;          // rows written
  std::vector<T> pending_, tile_;
};

}  // namespace stillground::record
