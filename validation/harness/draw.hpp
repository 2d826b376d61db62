#pragma once

#include <cstdint>
#include <initializer_list>
#include <random>

namespace stillground::validation {

/// What is drawn at random, the same on every machine: the generator's bits are the standard's, while its distributions
/// are each library's own, so they are made here.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : bits_(seed) {}

  double between(double low, double high) { return low + (high - low) * static_cast<double>(bits_() >> 11) * 0x1p-53; }
  int one_of(int from, int to) { return from + static_cast<int>(between(0, to - from + 1)); }  ///< both ends included
  bool chance(double of) { return between(0, 1) < of; }

  template <class T>
  T pick(std::initializer_list<T> from) {
    return from.begin()[one_of(0, static_cast<int>(from.size()) - 1)];
  }

 private:
  std::mt19937_64 bits_;
};

}  // namespace stillground::validation
