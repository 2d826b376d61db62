#include "engine/march/fused/instruction_sets.hpp"

namespace stillground::march::fused {

extern const Kernels baseline_kernels;
#ifdef STILLGROUND_X86
extern const Kernels avx2_kernels, avx512_kernels;
#endif

const std::vector<const Kernels*>& available_kernels() {
  static const std::vector<const Kernels*> available = [] {
    std::vector<const Kernels*> found;
#ifdef STILLGROUND_X86
    const bool avx2 = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
    if (avx2 && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512dq") &&
        __builtin_cpu_supports("avx512vl")) {
      found.push_back(&avx512_kernels);
    }
    if (avx2) found.push_back(&avx2_kernels);
#endif
    found.push_back(&baseline_kernels);
    return found;
  }();
  return available;
}

}  // namespace stillground::march::fused
