#include "engine/record/hdf5/packing.hpp"

#include <libdeflate.h>

#include <bit>
#include <cstdint>
#include <new>
#include <stdexcept>
#include <type_traits>

#include "engine/record/hdf5/dataset.hpp"

namespace stillground::record::hdf5 {

namespace {

/// The filter "shuffle": all first bytes, then all second ones, and so on. Numbers of one kind then compress.
template <class T>
void shuffle(std::span<const T> values, std::byte* out) {
  using Bits = std::conditional_t<sizeof(T) == 8, std::uint64_t, std::uint32_t>;
  static_assert(sizeof(Bits) == sizeof(T) && std::endian::native == std::endian::little);
  const std::size_t n = values.size();
  for (std::size_t byte = 0; byte < sizeof(T); ++byte) {
    std::byte* row = out + byte * n;
    const std::size_t shift = 8 * byte;
    for (std::size_t i = 0; i < n; ++i) row[i] = static_cast<std::byte>(std::bit_cast<Bits>(values[i]) >> shift);
  }
}

}  // namespace

void Packer::Free::operator()(libdeflate_compressor* compressor) const {
  libdeflate_free_compressor(compressor);
}

Packer::Packer() : compressor_(libdeflate_alloc_compressor(deflate_level)) {
  if (!compressor_) throw std::bad_alloc();
}

Packer::~Packer() = default;

template <class T>
std::span<const std::byte> Packer::pack(std::span<const T> chunk) {
  shuffled_.resize(chunk.size_bytes());
  shuffle(chunk, shuffled_.data());
  packed_.resize(libdeflate_zlib_compress_bound(compressor_.get(), shuffled_.size()));
  const std::size_t size =
      libdeflate_zlib_compress(compressor_.get(), shuffled_.data(), shuffled_.size(), packed_.data(), packed_.size());
  if (size == 0) throw std::logic_error("a chunk does not fit into its own bound");
  return std::span(packed_).first(size);
}

template std::span<const std::byte> Packer::pack(std::span<const double>);
template std::span<const std::byte> Packer::pack(std::span<const float>);
template std::span<const std::byte> Packer::pack(std::span<const std::int32_t>);

}  // namespace stillground::record::hdf5
