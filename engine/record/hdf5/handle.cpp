#include "engine/record/hdf5/handle.hpp"

#include <utility>

namespace stillground::record::hdf5 {

namespace {

/// Upward: the first error met is the innermost one; only that is kept.
herr_t keep_first(unsigned depth, const H5E_error2_t* error, void* text) {
  if (depth == 0 && error->desc != nullptr) *static_cast<std::string*>(text) = error->desc;
  return 0;
}

/// The innermost entry of the library's error stack. Where that quotes the operating system ("errno = 28, error message
/// = 'No space left on device', buf = 0x..."), only the quotation is of use to anybody.
std::string innermost_reason() {
  std::string text;
  H5Ewalk2(H5E_DEFAULT, H5E_WALK_UPWARD, keep_first, &text);
  const std::string_view mark = "error message = '";
  const std::size_t from = text.find(mark);
  if (from != std::string::npos) {
    const std::size_t start = from + mark.size();
    text = text.substr(start, text.find('\'', start) - start);
  }
  return text;
}

std::string joined(std::string_view attempt, std::string_view reason) {
  std::string text(attempt);
  if (!reason.empty()) text.append(": ").append(reason);
  return text;
}

}  // namespace

Failure::Failure(std::string_view attempt) : Failure(attempt, innermost_reason()) {}
Failure::Failure(std::string_view attempt, std::string_view reason) : std::runtime_error(joined(attempt, reason)) {}

void prepare_library() {
  [[maybe_unused]] static const herr_t once = H5dont_atexit();
  H5Eset_auto2(H5E_DEFAULT, nullptr, nullptr);
}

Handle::Handle(hid_t id, Closer closer, std::string_view attempt) : id_(checked(id, attempt)), closer_(closer) {}

Handle::~Handle() {
  if (id_ >= 0) closer_(id_);
}

Handle::Handle(Handle&& other) noexcept : id_(std::exchange(other.id_, H5I_INVALID_HID)), closer_(other.closer_) {}

Handle& Handle::operator=(Handle&& other) noexcept {
  std::swap(id_, other.id_);
  std::swap(closer_, other.closer_);
  return *this;
}

void Handle::close(std::string_view attempt) {
  if (id_ >= 0) checked(closer_(std::exchange(id_, H5I_INVALID_HID)), attempt);
}

}  // namespace stillground::record::hdf5
