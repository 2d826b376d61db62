#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

struct libdeflate_compressor;

namespace stillground::record::hdf5 {

/// Packs chunks outside the library, byte for byte what its filters "shuffle" and "deflate" can undo, in a fraction of
/// the time that its own take (see deflate_level). One thread at a time; equal chunks give equal bytes.
class Packer {
 public:
  Packer();
  ~Packer();
  Packer(const Packer&) = delete;
  Packer& operator=(const Packer&) = delete;

  /// The chunk, packed. T is double, float or std::int32_t. What is returned holds until the next call.
  template <class T>
  std::span<const std::byte> pack(std::span<const T> chunk);

 private:
  struct Free {
    void operator()(libdeflate_compressor* compressor) const;
  };
  std::unique_ptr<libdeflate_compressor, Free> compressor_;
  std::vector<std::byte> shuffled_, packed_;
};

}  // namespace stillground::record::hdf5
