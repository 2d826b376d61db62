#include "engine/record/hdf5/attribute.hpp"

#include <memory>

#include "engine/record/hdf5/scalar.hpp"

namespace stillground::record::hdf5 {

namespace {

Handle single() {
  return {H5Screate(H5S_SCALAR), H5Sclose, "shape of an attribute"};
}

Handle text_type(std::size_t size) {
  Handle type(H5Tcopy(H5T_C_S1), H5Tclose, "type of a text");
  checked(H5Tset_size(type.id(), size), "size of a text");
  checked(H5Tset_cset(type.id(), H5T_CSET_UTF8), "characters of a text");
  return type;
}

Handle create(hid_t object, const char* name, hid_t type, hid_t space) {
  return {H5Acreate2(object, name, type, space, H5P_DEFAULT, H5P_DEFAULT), H5Aclose,
          std::string("attribute ") + name + " cannot be created"};
}

Handle open(hid_t object, const char* name) {
  return {H5Aopen(object, name, H5P_DEFAULT), H5Aclose, std::string("attribute ") + name + " is missing"};
}

void write(const Handle& attribute, hid_t type, const void* value) {
  checked(H5Awrite(attribute.id(), type, value), "attribute cannot be written");
}

/// A damaged or foreign file may hold anything under the name: what is read into one value must be one value.
void expect_single(const Handle& attribute, const char* name, H5T_class_t wanted) {
  const Handle type(H5Aget_type(attribute.id()), H5Tclose, "type of an attribute");
  const Handle space(H5Aget_space(attribute.id()), H5Sclose, "shape of an attribute");
  const bool numbers = wanted == H5T_FLOAT || wanted == H5T_INTEGER;
  const H5T_class_t found = H5Tget_class(type.id());
  const bool fits = numbers ? (found == H5T_FLOAT || found == H5T_INTEGER) : found == wanted;
  if (!fits || H5Sget_simple_extent_npoints(space.id()) != 1) {
    throw Failure(std::string("attribute ") + name + " is not a single " + (numbers ? "number" : "text"));
  }
}

}  // namespace

bool has_attribute(hid_t object, const char* name) {
  return H5Aexists(object, name) > 0;
}

void write_label(hid_t object, const char* name, const std::string& text) {
  const Handle type = text_type(text.empty() ? 1 : text.size());  // HDF5 has no text of length 0
  const Handle space = single();
  write(create(object, name, type.id(), space.id()), type.id(), text.c_str());
}

void write_string(hid_t object, const char* name, const std::string& text) {
  const Handle type = text_type(H5T_VARIABLE);
  const Handle space = single();
  const char* characters = text.c_str();
  write(create(object, name, type.id(), space.id()), type.id(), &characters);
}

std::string read_text(hid_t object, const char* name) {
  const Handle attribute = open(object, name);
  expect_single(attribute, name, H5T_STRING);
  const Handle stored(H5Aget_type(attribute.id()), H5Tclose, "type of an attribute");
  if (H5Tis_variable_str(stored.id()) > 0) {
    const Handle type = text_type(H5T_VARIABLE);
    char* characters = nullptr;
    checked(H5Aread(attribute.id(), type.id(), &characters), "attribute cannot be read");
    const std::unique_ptr<char, herr_t (*)(void*)> owner(characters, H5free_memory);
    return characters == nullptr ? std::string() : std::string(characters);
  }
  std::string text(H5Tget_size(stored.id()), '\0');
  checked(H5Aread(attribute.id(), stored.id(), text.data()), "attribute cannot be read");
  return text.substr(0, text.find('\0'));
}

template <class T>
void write_number(hid_t object, const char* name, T value) {
  const Handle space = single();
  write(create(object, name, Scalar<T>::file(), space.id()), Scalar<T>::memory(), &value);
}

template <class T>
void change_number(hid_t object, const char* name, T value) {
  write(open(object, name), Scalar<T>::memory(), &value);
}

template <class T>
T read_number(hid_t object, const char* name) {
  const Handle attribute = open(object, name);
  expect_single(attribute, name, H5T_FLOAT);
  T value{};
  checked(H5Aread(attribute.id(), Scalar<T>::memory(), &value), "attribute cannot be read");
  return value;
}

template void write_number(hid_t, const char*, double);
template void write_number(hid_t, const char*, float);
template void write_number(hid_t, const char*, std::int32_t);
template void change_number(hid_t, const char*, std::int32_t);
template double read_number(hid_t, const char*);
template std::int32_t read_number(hid_t, const char*);

}  // namespace stillground::record::hdf5
