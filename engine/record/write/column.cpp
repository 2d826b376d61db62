#include "engine/record/write/column.hpp"

#include <algorithm>
#include <limits>
#include <stdexcept>
#include <string>

#include "engine/base/temperature.hpp"

namespace stillground::record {

namespace {

/// The extent of a variable's first dimension; 1 for a single number.
hsize_t rows_of(const hdf5::Shape& shape) {
  return shape.empty() ? 1 : shape[0];
}

/// The next index in a block of `extents`, last dimension fastest, from dimension `from` on; false after the last.
bool advance(hdf5::Shape& index, const hdf5::Shape& extents, const hdf5::Shape& steps, std::size_t from,
             std::size_t past) {
  for (std::size_t d = past; d-- > from;) {
    index[d] += steps[d];
    if (index[d] < extents[d]) return true;
    index[d] = 0;
  }
  return false;
}

/// Copies the tile at `offset` out of `values` of `shape`; what lies beyond the shape is left as it is in `tile`.
template <class T>
void cut(const std::vector<T>& values, const hdf5::Shape& shape, const hdf5::Shape& offset, const hdf5::Shape& chunk,
         std::vector<T>& tile) {
  const std::size_t last = shape.size() - 1;
  hdf5::Shape extents(shape.size()), index(shape.size(), 0);
  for (std::size_t d = 0; d < shape.size(); ++d) extents[d] = std::min(chunk[d], shape[d] - offset[d]);
  const hdf5::Shape ones(shape.size(), 1);
  do {
    std::size_t from = 0, to = 0;
    for (std::size_t d = 0; d < shape.size(); ++d) {
      from = from * shape[d] + offset[d] + index[d];
      to = to * chunk[d] + index[d];
    }
    std::copy_n(values.begin() + static_cast<std::ptrdiff_t>(from), extents[last],
                tile.begin() + static_cast<std::ptrdiff_t>(to));
  } while (advance(index, extents, ones, 0, last));
}

}  // namespace

template <class T>
Column<T>::Column(ResultWriter& writer, const schema::Variable& variable)
    : packer_(writer.packer()),
      dataset_(writer.define(variable)),
      shape_(dataset_.shape()),
      chunk_(dataset_.chunk()),
      offset_(variable.unit == "degC" ? static_cast<T>(zero_celsius) : T{0}),
      gap_(variable.has_gaps ? std::numeric_limits<T>::quiet_NaN() : T{0}),
      row_(hdf5::count(shape_) / std::max<hsize_t>(1, rows_of(shape_))) {
  if (!chunk_.empty()) tile_.resize(hdf5::count(chunk_));
  pending_.reserve(at_once() * row_);
}

template <class T>
hsize_t Column<T>::at_once() const {
  return chunk_.empty() ? rows_of(shape_) : chunk_[0];
}

template <class T>
void Column<T>::add(std::span<const T> rows) {
  const std::size_t gathered = pending_.size() + rows.size();
  if (rows.size() % row_ != 0 || first_ + gathered / row_ > rows_of(shape_)) {
    throw std::logic_error(dataset_.name() + " is given another number of values than it holds");
  }
  std::transform(rows.begin(), rows.end(), std::back_inserter(pending_), [&](T value) { return value - offset_; });
  while (!pending_.empty() && pending_.size() >= at_once() * row_) write(at_once());
}

template <class T>
void Column<T>::close() {
  if (!pending_.empty()) write(pending_.size() / row_);
  if (first_ != rows_of(shape_)) {
    throw std::logic_error(dataset_.name() + " is given another number of values than it holds");
  }
}

template <class T>
void Column<T>::write(hsize_t rows) {
  const std::size_t values = rows * row_;
  if (chunk_.empty()) {
    dataset_.write(std::span<const T>(pending_));
  } else {
    write_tiles(rows);
  }
  first_ += rows;
  pending_.erase(pending_.begin(), pending_.begin() + static_cast<std::ptrdiff_t>(values));
}

template <class T>
void Column<T>::write_tiles(hsize_t rows) {
  hdf5::Shape shape = shape_, offset(shape_.size(), 0);
  shape[0] = rows;
  do {
    std::fill(tile_.begin(), tile_.end(), gap_);
    cut(pending_, shape, offset, chunk_, tile_);
    hdf5::Shape in_file = offset;
    in_file[0] = first_;
    dataset_.write_packed(in_file, packer_.pack(std::span<const T>(tile_)));
  } while (advance(offset, shape, chunk_, 1, shape.size()));
}

template class Column<double>;
template class Column<float>;
template class Column<std::int32_t>;

}  // namespace stillground::record
