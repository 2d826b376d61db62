#pragma once

#include <map>
#include <vector>

#include "engine/record/frames.hpp"
#include "engine/record/hdf5/dataset.hpp"
#include "engine/record/hdf5/file.hpp"
#include "engine/record/hdf5/packing.hpp"
#include "engine/record/schema.hpp"

namespace stillground::record {

/// A result file in the making: knows how long each dimension is and gives every variable what the schema says of it.
/// Coordinate variables (`time`, `z`, ...) must be defined before the variables that lie on them.
class ResultWriter {
 public:
  using Lengths = std::map<schema::Dim, std::size_t>;

  ResultWriter(const hdf5::File& file, const Date& start, Lengths lengths);

  /// Creates the variable with its dimensions, attributes and chunks; its values follow.
  hdf5::Dataset define(const schema::Variable& variable);

  /// Creates the variable and writes all its values (degC where the schema says so).
  template <class T>
  void put(const schema::Variable& variable, const std::vector<T>& values);

  /// What packs the chunks.
  hdf5::Packer& packer() { return packer_; }

  std::size_t length(schema::Dim dim) const { return lengths_.at(dim); }

 private:
  void describe(const schema::Variable& variable, const hdf5::Dataset& dataset) const;

  const hdf5::File& file_;
  Date start_;
  Lengths lengths_;
  std::map<schema::Dim, hdf5::Dataset> scales_;
  hdf5::Packer packer_;
};

}  // namespace stillground::record
