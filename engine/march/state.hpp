#pragma once

#include <cstddef>
#include <cstdlib>
#include <new>
#include <vector>

namespace stillground::march {

/// Rows start on a cache line: SIMD loads of a row never straddle two.
template <class T>
struct Aligned {
  using value_type = T;
  Aligned() = default;
  template <class U>
  Aligned(const Aligned<U>&) {}
  T* allocate(std::size_t n) { return static_cast<T*>(::operator new (n * sizeof(T), std::align_val_t{64})); }
  void deallocate(T* p, std::size_t) { ::operator delete (p, std::align_val_t{64}); }
  bool operator==(const Aligned&) const { return true; }
};

using Vector = std::vector<double, Aligned<double>>;

/// All that changes in a march. With the load's hour it is enough to go on from, bit for bit.
struct State {
  double time = 0;  ///< since the run's start [s]
  Vector y;         ///< [group][row][z], see march::rows; padding is zero

  // The neighbours' sum at each group's wall [group][z] at the last refresh and the one before [K].
  Vector neighbours;
  Vector neighbours_before;
  double refreshed = 0;  ///< time of the last refresh [s]
};

}  // namespace stillground::march
