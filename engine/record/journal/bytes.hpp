#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace stillground::record {

// Records are little-endian; on another machine the numbers would have to be turned round here.
static_assert(std::endian::native == std::endian::little);

using Bytes = std::vector<std::byte>;

/// Puts numbers, arrays and texts (each with its length before it) one after the other.
class Encoder {
 public:
  template <class T>
  requires std::is_trivially_copyable_v<T> Encoder& number(const T& value) {
    const auto* raw = reinterpret_cast<const std::byte*>(&value);
    bytes_.insert(bytes_.end(), raw, raw + sizeof(T));
    return *this;
  }

  template <class T>
  Encoder& array(std::span<const T> values) {
    number(static_cast<std::uint64_t>(values.size()));
    const auto raw = std::as_bytes(values);
    bytes_.insert(bytes_.end(), raw.begin(), raw.end());
    return *this;
  }

  template <class T>
  Encoder& array(const std::vector<T>& values) {
    return array(std::span<const T>(values));
  }

  Encoder& text(std::string_view characters) { return array(std::span<const char>(characters)); }

  const Bytes& bytes() const { return bytes_; }

 private:
  Bytes bytes_;
};

/// Takes out again what an Encoder put in. Throws std::out_of_range where the bytes end too early.
class Decoder {
 public:
  explicit Decoder(std::span<const std::byte> bytes) : rest_(bytes) {}

  template <class T>
  requires std::is_trivially_copyable_v<T> T number() {
    T value;
    std::memcpy(&value, take(1, sizeof(T)).data(), sizeof(T));
    return value;
  }

  template <class T>
  std::vector<T> array() {
    const auto length = number<std::uint64_t>();
    const auto raw = take(length, sizeof(T));
    std::vector<T> values(length);
    if (length > 0) std::memcpy(values.data(), raw.data(), raw.size());
    return values;
  }

  std::string text() {
    const auto characters = array<char>();
    return {characters.begin(), characters.end()};
  }

  bool empty() const { return rest_.empty(); }

 private:
  std::span<const std::byte> take(std::uint64_t items, std::size_t size) {
    if (items > rest_.size() / size) throw std::out_of_range("a record ends too early");
    const auto taken = rest_.first(items * size);
    rest_ = rest_.subspan(items * size);
    return taken;
  }

  std::span<const std::byte> rest_;
};

}  // namespace stillground::record
