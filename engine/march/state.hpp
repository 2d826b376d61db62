#pragma once

#include <cstddef>
#include <cstdlib>
#include <new>
#include <vector>

namespace stillground::march {

/// Rows start on a cache line: SIMD loads of a row never straddle two. Vectors start on a pair of them: what different
/// threads write stands apart.
template <class T>
struct Aligned {
  using value_type = T;
  Aligned() = default;
  template <class U>
  Aligned(const Aligned<U>&) {}
  T* allocate(std::size_t n) { return static_cast<T*>(::operator new (n * sizeof(T), std::align_val_t{128})); }
  void deallocate(T* p, std::size_t) { ::operator delete (p, std::align_val_t{128}); }
  bool operator==(const Aligned&) const { return true; }
};

using Vector = std::vector<double, Aligned<double>>;

/// All that changes in a march. With the load's hour it is enough to go on from, bit for bit.
struct State {
  double time = 0;  ///< since the run's start [s]
  Vector y;         ///< [group][row][z], see march::StateLayout; padding is zero

  // The neighbours' sum at each group's wall [group][z] at the last update, and an update interval earlier on the line
  // along which it is extrapolated [K].
  Vector neighbours;
  Vector neighbours_before;
  double updated = 0;  ///< time of the last update [s]

  // Two rates only: amplitudes of the radial modes [group][row][z] [K m2], rows as march::StateLayout has them. They
  // are what is marched; the rings' temperatures in y follow from them, the innermost at every hour's end, the others
  // at midnight.
  Vector amplitudes;

  // What each of the coupling's shells brings to it: [shell][group][z] as last formed [K], and its change from the time
  // before that to then [K/s].
  Vector shell_sums;
  Vector shell_rates;
  std::vector<double> shells_formed;  ///< [shell]: when [s]
};

}  // namespace stillground::march
