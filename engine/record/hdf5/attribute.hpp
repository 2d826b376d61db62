#pragma once

#include <cstdint>
#include <string>

#include "engine/record/hdf5/handle.hpp"

/// Attributes of a file or a dataset, given by its id. T is double, float or std::int32_t.
namespace stillground::record::hdf5 {

bool has_attribute(hid_t object, const char* name);

/// Characters of fixed length, as netCDF tools of every age expect them for `units`, `long_name`, `Conventions`.
void write_label(hid_t object, const char* name, const std::string& text);

/// A string of any length, UTF-8 (netCDF's `string`): what people wrote, such as the scenario.
void write_string(hid_t object, const char* name, const std::string& text);

/// Reads what either of the two wrote.
std::string read_text(hid_t object, const char* name);

template <class T>
void write_number(hid_t object, const char* name, T value);

/// Overwrites a number that is there.
template <class T>
void change_number(hid_t object, const char* name, T value);

template <class T>
T read_number(hid_t object, const char* name);

}  // namespace stillground::record::hdf5
