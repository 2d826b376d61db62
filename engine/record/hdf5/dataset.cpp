#include "engine/record/hdf5/dataset.hpp"

#include <fmt/format.h>
#include <hdf5_hl.h>

#include <algorithm>
#include <limits>

#include "engine/record/hdf5/scalar.hpp"

namespace stillground::record::hdf5 {

namespace {

constexpr std::size_t cache_slots = 12421;  ///< a prime well above the number of chunks that are kept

Handle space_of(const Shape& shape) {
  if (shape.empty()) return {H5Screate(H5S_SCALAR), H5Sclose, "shape"};
  return {H5Screate_simple(static_cast<int>(shape.size()), shape.data(), nullptr), H5Sclose, "shape"};
}

Handle creation_properties() {
  Handle creation(H5Pcreate(H5P_DATASET_CREATE), H5Pclose, "dataset properties");
  checked(H5Pset_obj_track_times(creation.id(), false), "no time stamps");
  checked(H5Pset_attr_creation_order(creation.id(), H5P_CRT_ORDER_TRACKED | H5P_CRT_ORDER_INDEXED),
          "order of attributes");
  return creation;
}

void set_chunks(const Handle& creation, const Shape& shape, Shape chunk) {
  for (std::size_t i = 0; i < shape.size(); ++i) chunk.at(i) = std::clamp<hsize_t>(chunk.at(i), 1, shape[i]);
  checked(H5Pset_chunk(creation.id(), static_cast<int>(chunk.size()), chunk.data()), "chunks");
  checked(H5Pset_shuffle(creation.id()), "shuffle");
  checked(H5Pset_deflate(creation.id(), deflate_level), "deflate");
}

Handle create_array(const File& file, const std::string& name, hid_t type, const Shape& shape, const Handle& creation) {
  // Chunks are written when they are handed over: from a cache they would be written on closing, where an error is
  // lost.
  const Handle access(H5Pcreate(H5P_DATASET_ACCESS), H5Pclose, "dataset access");
  checked(H5Pset_chunk_cache(access.id(), cache_slots, 0, 1.0), "chunk cache");
  const Handle space = space_of(shape);
  return {H5Dcreate2(file.id(), name.c_str(), type, space.id(), H5P_DEFAULT, creation.id(), access.id()), H5Dclose,
          name + " cannot be created"};
}

}  // namespace

std::size_t count(const Shape& shape) {
  std::size_t n = 1;
  for (const hsize_t extent : shape) n *= extent;
  return n;
}

template <class T>
Dataset Dataset::create(const File& file, const std::string& name, const Shape& shape, const Shape& chunk,
                        bool has_gaps) {
  const Handle creation = creation_properties();
  if (!chunk.empty()) set_chunks(creation, shape, chunk);
  const T gap = std::numeric_limits<T>::quiet_NaN();
  if (has_gaps) checked(H5Pset_fill_value(creation.id(), Scalar<T>::memory(), &gap), "fill value");
  return Dataset(create_array(file, name, Scalar<T>::file(), shape, creation), name);
}

Dataset Dataset::create_bare_dimension(const File& file, const std::string& name, hsize_t extent) {
  Dataset dataset(create_array(file, name, H5T_IEEE_F32BE, {extent}, creation_properties()), name);
  // The words are netCDF-4's own; by them its readers know that there is no variable of that name.
  const std::string words = fmt::format("This is a netCDF dimension but not a netCDF variable.{:10d}", extent);
  checked(H5DSset_scale(dataset.id(), words.c_str()), name + " cannot become a dimension");
  return dataset;
}

Dataset Dataset::open(const File& file, const std::string& name, std::size_t cache) {
  const Handle access(H5Pcreate(H5P_DATASET_ACCESS), H5Pclose, "dataset access");
  if (cache > 0) checked(H5Pset_chunk_cache(access.id(), cache_slots, cache, 1.0), "chunk cache");
  return Dataset(Handle(H5Dopen2(file.id(), name.c_str(), access.id()), H5Dclose, "variable " + name + " is missing"),
                 name);
}

Shape Dataset::shape() const {
  const Handle space(H5Dget_space(id()), H5Sclose, attempt("has no shape"));
  const int rank = checked(H5Sget_simple_extent_ndims(space.id()), attempt("has no shape"));
  Shape shape(static_cast<std::size_t>(rank));
  checked(H5Sget_simple_extent_dims(space.id(), shape.data(), nullptr), attempt("has no shape"));
  return shape;
}

Shape Dataset::chunk() const {
  const Handle creation(H5Dget_create_plist(id()), H5Pclose, attempt("has no layout"));
  if (H5Pget_layout(creation.id()) != H5D_CHUNKED) return {};
  Shape chunk(shape().size());
  checked(H5Pget_chunk(creation.id(), static_cast<int>(chunk.size()), chunk.data()), attempt("has no chunks"));
  return chunk;
}

void Dataset::become_scale() {
  checked(H5DSset_scale(id(), name_.c_str()), attempt("cannot become a dimension"));
}

void Dataset::attach(unsigned dim, const Dataset& scale) {
  checked(H5DSattach_scale(id(), scale.id(), dim), attempt("cannot be given its dimension"));
}

/// The file's space with `rows` rows selected; `values` must fill them.
Handle Dataset::rows_of(hsize_t first, hsize_t rows, std::size_t values) const {
  Shape block = shape();
  Shape offset(block.size(), 0);
  if (block.empty() || first + rows > block[0]) throw std::logic_error(attempt("has no such rows"));
  offset[0] = first;
  block[0] = rows;
  if (count(block) != values) throw std::logic_error(attempt("is given another number of values than it holds"));
  Handle space(H5Dget_space(id()), H5Sclose, attempt("has no shape"));
  checked(H5Sselect_hyperslab(space.id(), H5S_SELECT_SET, offset.data(), nullptr, block.data(), nullptr),
          attempt("has no such rows"));
  return space;
}

template <class T>
void Dataset::write(std::span<const T> values) {
  if (count(shape()) != values.size()) {
    throw std::logic_error(attempt("is given another number of values than it holds"));
  }
  checked(H5Dwrite(id(), Scalar<T>::memory(), H5S_ALL, H5S_ALL, H5P_DEFAULT, values.data()),
          attempt("cannot be written"));
}

template <class T>
void Dataset::write_rows(hsize_t first, hsize_t rows, std::span<const T> values) {
  const Handle in_file = rows_of(first, rows, values.size());
  const Handle in_memory = space_of({values.size()});
  checked(H5Dwrite(id(), Scalar<T>::memory(), in_memory.id(), in_file.id(), H5P_DEFAULT, values.data()),
          attempt("cannot be written"));
}

void Dataset::write_packed(const Shape& offset, std::span<const std::byte> chunk) {
  constexpr std::uint32_t every_filter = 0;
  checked(H5Dwrite_chunk(id(), H5P_DEFAULT, every_filter, offset.data(), chunk.size(), chunk.data()),
          attempt("cannot be written"));
}

template <class T>
std::vector<T> Dataset::read() const {
  std::vector<T> values(count(shape()));
  checked(H5Dread(id(), Scalar<T>::memory(), H5S_ALL, H5S_ALL, H5P_DEFAULT, values.data()), attempt("cannot be read"));
  return values;
}

template <class T>
std::vector<T> Dataset::read_rows(hsize_t first, hsize_t rows) const {
  Shape block = shape();
  if (!block.empty()) block[0] = rows;
  std::vector<T> values(count(block));
  const Handle in_file = rows_of(first, rows, values.size());
  const Handle in_memory = space_of({values.size()});
  checked(H5Dread(id(), Scalar<T>::memory(), in_memory.id(), in_file.id(), H5P_DEFAULT, values.data()),
          attempt("cannot be read"));
  return values;
}

template Dataset Dataset::create<double>(const File&, const std::string&, const Shape&, const Shape&, bool);
template Dataset Dataset::create<float>(const File&, const std::string&, const Shape&, const Shape&, bool);
template Dataset Dataset::create<std::int32_t>(const File&, const std::string&, const Shape&, const Shape&, bool);
template void Dataset::write(std::span<const double>);
template void Dataset::write(std::span<const float>);
template void Dataset::write(std::span<const std::int32_t>);
template void Dataset::write_rows(hsize_t, hsize_t, std::span<const double>);
template void Dataset::write_rows(hsize_t, hsize_t, std::span<const float>);
template std::vector<double> Dataset::read() const;
template std::vector<float> Dataset::read() const;
template std::vector<std::int32_t> Dataset::read() const;
template std::vector<double> Dataset::read_rows(hsize_t, hsize_t) const;
template std::vector<float> Dataset::read_rows(hsize_t, hsize_t) const;

}  // namespace stillground::record::hdf5
