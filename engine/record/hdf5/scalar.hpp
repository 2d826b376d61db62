#pragma once

#include <hdf5.h>

#include <cstdint>

namespace stillground::record::hdf5 {

/// How a number of type T stands in memory and in the file (little-endian, so that equal runs give equal bytes).
template <class T>
struct Scalar;

template <>
struct Scalar<double> {
  static hid_t memory() { return H5T_NATIVE_DOUBLE; }
  static hid_t file() { return H5T_IEEE_F64LE; }
};

template <>
struct Scalar<float> {
  static hid_t memory() { return H5T_NATIVE_FLOAT; }
  static hid_t file() { return H5T_IEEE_F32LE; }
};

template <>
struct Scalar<std::int32_t> {
  static hid_t memory() { return H5T_NATIVE_INT32; }
  static hid_t file() { return H5T_STD_I32LE; }
};

}  // namespace stillground::record::hdf5
