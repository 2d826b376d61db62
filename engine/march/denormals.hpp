// How a thread treats denormals, numbers below 2.2e-308 with fewer digits: one costs as much as a hundred others.
#pragma once

#if defined(__SSE2__)
#include <pmmintrin.h>
#include <xmmintrin.h>
#endif

namespace stillground::march {

#if defined(__SSE2__)
/// The calling thread takes denormals for zero from now on, read or made; returns how it treated them before.
inline unsigned flush_denormals() {
  const unsigned before = _mm_getcsr();
  _mm_setcsr(before | _MM_FLUSH_ZERO_ON | _MM_DENORMALS_ZERO_ON);
  return before;
}

/// As it was `before` flush_denormals.
inline void restore_denormals(unsigned before) {
  _mm_setcsr(before);
}
#else
/// Other processors are left as they are.
inline unsigned flush_denormals() {
  return 0;
}
inline void restore_denormals(unsigned) {}
#endif

}  // namespace stillground::march
