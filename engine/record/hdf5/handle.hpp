#pragma once

#include <hdf5.h>

#include <stdexcept>
#include <string>
#include <string_view>

/// RAII round the HDF5 1.10 C API. Everything here throws Failure; the writer and the reader turn it into an error that
/// names the file.
namespace stillground::record::hdf5 {

/// What was attempted and failed, and why.
class Failure : public std::runtime_error {
 public:
  /// The reason is the library's own, the innermost of its error stack.
  explicit Failure(std::string_view attempt);
  Failure(std::string_view attempt, std::string_view reason);
};

/// Before any other call: the library prints no error stack (in the calling thread), and tidies nothing up when the
/// program ends. Every handle closes itself; only a file that a full disk left open is there then, and closing that
/// again would crash.
void prepare_library();

/// Throws Failure if `status` (a herr_t, htri_t or count) is negative, else returns it.
template <class Status>
Status checked(Status status, std::string_view attempt) {
  if (status < 0) throw Failure(attempt);
  return status;
}

/// An identifier that closes itself once.
class Handle {
 public:
  using Closer = herr_t (*)(hid_t);

  Handle() = default;
  /// Throws Failure if `id` is negative: the call that made it failed.
  Handle(hid_t id, Closer closer, std::string_view attempt);
  ~Handle();
  Handle(Handle&& other) noexcept;
  Handle& operator=(Handle&& other) noexcept;

  hid_t id() const { return id_; }

  /// Closes now and throws Failure if that fails (the destructor cannot).
  void close(std::string_view attempt);

 private:
  hid_t id_ = H5I_INVALID_HID;
  Closer closer_ = nullptr;
};

}  // namespace stillground::record::hdf5
