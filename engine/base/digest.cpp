#include "engine/base/digest.hpp"

#include <fmt/format.h>

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

namespace stillground {
namespace {

using Words = std::array<std::uint32_t, 8>;

// FIPS 180-4, 4.2.2: the first 32 bits of the fractional parts of the cube roots of the first 64 primes.
constexpr std::array<std::uint32_t, 64> round_constants = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

// 5.3.3: of the square roots of the first 8 primes.
constexpr Words initial = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                           0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};

std::uint32_t byte_at(std::string_view block, std::size_t i) {
  return static_cast<unsigned char>(block[i]);
}

// 6.2.2, step 1.
std::array<std::uint32_t, 64> schedule(std::string_view block) {
  std::array<std::uint32_t, 64> w{};
  for (std::size_t t = 0; t < 16; ++t) {
    w[t] = byte_at(block, 4 * t) << 24 | byte_at(block, 4 * t + 1) << 16 | byte_at(block, 4 * t + 2) << 8 |
           byte_at(block, 4 * t + 3);
  }
  for (std::size_t t = 16; t < 64; ++t) {
    const std::uint32_t s0 = std::rotr(w[t - 15], 7) ^ std::rotr(w[t - 15], 18) ^ w[t - 15] >> 3;
    const std::uint32_t s1 = std::rotr(w[t - 2], 17) ^ std::rotr(w[t - 2], 19) ^ w[t - 2] >> 10;
    w[t] = s1 + w[t - 7] + s0 + w[t - 16];
  }
  return w;
}

// 6.2.2, steps 2 to 4; a..h of the standard are v[0]..v[7].
void absorb(Words& hash, std::string_view block) {
  const auto w = schedule(block);
  Words v = hash;
  for (std::size_t t = 0; t < 64; ++t) {
    const std::uint32_t sum1 = std::rotr(v[4], 6) ^ std::rotr(v[4], 11) ^ std::rotr(v[4], 25);
    const std::uint32_t choice = (v[4] & v[5]) ^ (~v[4] & v[6]);
    const std::uint32_t t1 = v[7] + sum1 + choice + round_constants[t] + w[t];
    const std::uint32_t sum0 = std::rotr(v[0], 2) ^ std::rotr(v[0], 13) ^ std::rotr(v[0], 22);
    const std::uint32_t majority = (v[0] & v[1]) ^ (v[0] & v[2]) ^ (v[1] & v[2]);
    v = {t1 + sum0 + majority, v[0], v[1], v[2], v[3] + t1, v[4], v[5], v[6]};
  }
  for (std::size_t i = 0; i < 8; ++i) hash[i] += v[i];
}

// 5.1.1: a one bit, zeros, the length in bits.
std::string padded_tail(std::string_view tail, std::uint64_t bytes) {
  std::string block(tail);
  block += '\x80';
  while (block.size() % 64 != 56) block += '\0';
  for (int shift = 56; shift >= 0; shift -= 8) block += static_cast<char>(bytes * 8 >> shift & 0xff);
  return block;
}

}  // namespace

std::string sha256(std::string_view bytes) {
  Words hash = initial;
  const std::size_t whole = bytes.size() / 64 * 64;
  for (std::size_t i = 0; i < whole; i += 64) absorb(hash, bytes.substr(i, 64));
  const std::string tail = padded_tail(bytes.substr(whole), bytes.size());
  for (std::size_t i = 0; i < tail.size(); i += 64) absorb(hash, std::string_view(tail).substr(i, 64));
  std::string text;
  for (const std::uint32_t word : hash) text += fmt::format("{:08x}", word);
  return text;
}

}  // namespace stillground
