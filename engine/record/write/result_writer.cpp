#include "engine/record/write/result_writer.hpp"

#include <limits>
#include <utility>

#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/write/column.hpp"

namespace stillground::record {

namespace {

using schema::Dim;
using schema::Variable;

/// How much of each dimension goes into one chunk. One group at a time for the fields on (z, r), so that the history at
/// a point is read without the other groups; the narrower fields take groups together, or their chunks would be tiny.
hsize_t chunk_of(const Variable& variable, Dim dim) {
  const bool on_r = variable.dims.size() == 4;
  switch (dim) {
    case Dim::time:
      return hours_per_year;
    case Dim::snapshot:
    case Dim::year:
      return 12;
    case Dim::group:
      return on_r ? 1 : 16;
    default:
      return std::numeric_limits<hsize_t>::max();  // clamped to the dimension
  }
}

/// Short arrays are kept in one piece: a chunk's index and unpacking would cost more than it saves.
constexpr std::size_t smallest_chunked = 1024;

hdf5::Shape chunk_of(const Variable& variable, const hdf5::Shape& shape) {
  hdf5::Shape chunk;
  if (hdf5::count(shape) < smallest_chunked) return chunk;
  for (const Dim dim : variable.dims) chunk.push_back(chunk_of(variable, dim));
  return chunk;
}

hdf5::Dataset create(const hdf5::File& file, const Variable& variable, const hdf5::Shape& shape) {
  const hdf5::Shape chunk = chunk_of(variable, shape);
  switch (variable.kind) {
    case schema::Kind::real32:
      return hdf5::Dataset::create<float>(file, variable.name, shape, chunk, variable.has_gaps);
    case schema::Kind::int32:
      return hdf5::Dataset::create<std::int32_t>(file, variable.name, shape, chunk);
    default:
      return hdf5::Dataset::create<double>(file, variable.name, shape, chunk, variable.has_gaps);
  }
}

}  // namespace

ResultWriter::ResultWriter(const hdf5::File& file, const Date& start, Lengths lengths)
    : file_(file), start_(start), lengths_(std::move(lengths)) {
  for (const Dim dim : {Dim::bound, Dim::bore}) {
    scales_.emplace(dim, hdf5::Dataset::create_bare_dimension(file_, schema::name(dim), length(dim)));
  }
}

hdf5::Dataset ResultWriter::define(const Variable& variable) {
  hdf5::Shape shape;
  for (const Dim dim : variable.dims) shape.push_back(length(dim));
  hdf5::Dataset dataset = create(file_, variable, shape);
  if (variable.is_coordinate()) {
    dataset.become_scale();
    scales_.emplace(*variable.dims.begin(), hdf5::Dataset::open(file_, variable.name));
  } else {
    unsigned i = 0;
    for (const Dim dim : variable.dims) dataset.attach(i++, scales_.at(dim));
  }
  describe(variable, dataset);
  return dataset;
}

template <class T>
void ResultWriter::put(const Variable& variable, const std::vector<T>& values) {
  Column<T> column(*this, variable);
  column.add(values);
  column.close();
}

void ResultWriter::describe(const Variable& variable, const hdf5::Dataset& dataset) const {
  const auto label = [&](const char* name, std::string_view text) {
    if (!text.empty()) hdf5::write_label(dataset.id(), name, std::string(text));
  };
  label("long_name", variable.long_name);
  label("standard_name", variable.standard_name);
  label("units", schema::unit_text(variable, start_));
  if (variable.unit == schema::since_start) label("calendar", "noleap");
  label("cell_methods", variable.cell_methods);
  label("bounds", variable.bounds);
  label("coordinates", variable.coordinates);
  label("positive", variable.positive);
  if (variable.has_gaps) hdf5::write_number(dataset.id(), "_FillValue", std::numeric_limits<double>::quiet_NaN());
}

template void ResultWriter::put(const Variable&, const std::vector<double>&);
template void ResultWriter::put(const Variable&, const std::vector<float>&);
template void ResultWriter::put(const Variable&, const std::vector<std::int32_t>&);

}  // namespace stillground::record
