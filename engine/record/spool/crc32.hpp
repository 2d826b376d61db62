#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace stillground::record {

/// CRC-32 (polynomial 0x04C11DB7 reflected, start and final value all ones), as in ISO 3309 and IEEE 802.3. `before` is
/// the value of what came before, so that crc32(b, crc32(a)) is that of a and b together.
std::uint32_t crc32(std::span<const std::byte> bytes, std::uint32_t before = 0);

}  // namespace stillground::record
