#include "engine/record/spool/crc32.hpp"

#include <array>

namespace stillground::record {

namespace {

constexpr std::array<std::uint32_t, 256> make_table() {
  std::array<std::uint32_t, 256> table{};
  for (std::uint32_t i = 0; i < table.size(); ++i) {
    std::uint32_t remainder = i;
    for (int bit = 0; bit < 8; ++bit) remainder = (remainder >> 1) ^ ((remainder & 1U) != 0 ? 0xEDB88320U : 0U);
    table[i] = remainder;
  }
  return table;
}

constexpr auto table = make_table();

}  // namespace

std::uint32_t crc32(std::span<const std::byte> bytes, std::uint32_t before) {
  std::uint32_t crc = ~before;
  for (const std::byte byte : bytes) crc = table[(crc ^ std::to_integer<std::uint32_t>(byte)) & 0xFFU] ^ (crc >> 8);
  return ~crc;
}

}  // namespace stillground::record
