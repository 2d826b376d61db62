#pragma once

#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/hdf5/dataset.hpp"
#include "engine/record/hdf5/file.hpp"
#include "engine/record/read/year_weights.hpp"
#include "engine/record/schema.hpp"

namespace stillground::record::read {

/// The file says something that does not fit the rest of it.
class Mismatch : public std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// An open result file, read by the schema's variables: values come back in SI and kelvin, seconds for instants.
class Source {
 public:
  explicit Source(hdf5::File file);

  hid_t id() const { return file_.id(); }
  bool has(const schema::Variable& variable) const { return file_.has(variable.name); }

  /// Length of a dimension; 0 if the file has none of that name.
  std::size_t length(schema::Dim dim) const;

  /// All values of a variable. T is the schema's kind.
  template <class T>
  std::vector<T> all(const schema::Variable& variable) const;

  /// The values at one index of the first dimension.
  template <class T>
  std::vector<T> row(const schema::Variable& variable, std::size_t index) const;

 private:
  const hdf5::Dataset& dataset(const schema::Variable& variable) const;

  hdf5::File file_;
  std::map<schema::Dim, std::size_t> lengths_;
  mutable std::map<std::string, hdf5::Dataset> open_;  ///< kept open, for their caches
};

Header read_header(const Source& source);
std::vector<Hour> read_hours(const Source& source, const Header& header);
std::vector<YearBalance> read_balances(const Source& source, const Header& header);
/// None in a file from before they were kept.
std::vector<MinuteExtremes> read_minutes(const Source& source, const Header& header);
std::vector<double> read_snapshot_times(const Source& source);
Snapshot read_snapshot(const Source& source, double time, std::size_t s);
/// Sum of the snapshots' rises by their weights.
std::vector<float> weighted_rise(const Source& source, const std::vector<SnapshotWeight>& weights);

}  // namespace stillground::record::read
