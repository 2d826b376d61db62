#include "engine/record/read/source.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "engine/base/calendar.hpp"
#include "engine/base/temperature.hpp"

namespace stillground::record::read {

namespace {

using schema::Dim;

constexpr std::size_t most_cached = std::size_t{256} << 20;  ///< bytes

/// One row of chunks: reading the snapshots in turn then unpacks each chunk once, not once a snapshot.
std::size_t cache_for(const hdf5::Dataset& dataset) {
  const hdf5::Shape chunk = dataset.chunk();
  if (chunk.empty()) return 0;
  std::size_t values = 1;
  const hdf5::Shape shape = dataset.shape();
  for (std::size_t i = 0; i < shape.size(); ++i) {
    values *= i == 0 ? chunk[i] : (shape[i] + chunk[i] - 1) / chunk[i] * chunk[i];
  }
  return std::min(most_cached, values * sizeof(double));
}

/// Degrees Celsius, or hours since the start, back to kelvin and seconds.
template <class T>
void to_si(const schema::Variable& variable, std::vector<T>& values) {
  if (variable.unit == "degC") {
    for (T& value : values) value += static_cast<T>(zero_celsius);
  } else if (variable.unit == schema::since_start) {
    for (T& value : values) value *= static_cast<T>(seconds_per_hour);
  }
}

}  // namespace

Source::Source(hdf5::File file) : file_(std::move(file)) {
  for (const Dim dim : {Dim::time, Dim::bound, Dim::snapshot, Dim::year, Dim::group, Dim::z, Dim::r, Dim::bore}) {
    if (!file_.has(schema::name(dim))) continue;
    const hdf5::Shape shape = hdf5::Dataset::open(file_, schema::name(dim)).shape();
    if (shape.size() != 1) throw Mismatch(fmt::format("{} is not a dimension", schema::name(dim)));
    lengths_[dim] = shape[0];
  }
}

std::size_t Source::length(Dim dim) const {
  const auto found = lengths_.find(dim);
  return found == lengths_.end() ? 0 : found->second;
}

const hdf5::Dataset& Source::dataset(const schema::Variable& variable) const {
  const auto found = open_.find(variable.name);
  if (found != open_.end()) return found->second;
  hdf5::Dataset opened = hdf5::Dataset::open(file_, variable.name);
  hdf5::Shape expected;
  for (const Dim dim : variable.dims) expected.push_back(length(dim));
  if (opened.shape() != expected)
    throw Mismatch(fmt::format("{} does not have the shape of its dimensions", variable.name));
  if (const std::size_t cache = cache_for(opened); cache > 0) {
    opened = hdf5::Dataset::open(file_, variable.name, cache);
  }
  return open_.emplace(variable.name, std::move(opened)).first->second;
}

template <class T>
std::vector<T> Source::all(const schema::Variable& variable) const {
  std::vector<T> values = dataset(variable).read<T>();
  to_si(variable, values);
  return values;
}

template <class T>
std::vector<T> Source::row(const schema::Variable& variable, std::size_t index) const {
  std::vector<T> values = dataset(variable).read_rows<T>(index, 1);
  to_si(variable, values);
  return values;
}

template std::vector<double> Source::all(const schema::Variable&) const;
template std::vector<float> Source::all(const schema::Variable&) const;
template std::vector<std::int32_t> Source::all(const schema::Variable&) const;
template std::vector<double> Source::row(const schema::Variable&, std::size_t) const;
template std::vector<float> Source::row(const schema::Variable&, std::size_t) const;

}  // namespace stillground::record::read
