#include "engine/march/fused/instruction_sets.hpp"

namespace stillground::march::fused {

#define STILLGROUND_KERNELS(set, width)                                                   \
  namespace set {                                                                         \
  extern const RingKernels ring_kernels;                                                  \
  extern const ModeKernels mode_kernels;                                                  \
  extern const MacroStepKernels macro_step_kernels;                                       \
  extern const BoreKernels bore_kernels;                                                  \
  }                                                                                       \
  const Kernels set##_kernels {                                                           \
    .name = #set, .lanes = width, .rings = set::ring_kernels, .modes = set::mode_kernels, \
    .macro_step = set::macro_step_kernels, .bore = set::bore_kernels                      \
  }

STILLGROUND_KERNELS(baseline, 2);
#ifdef STILLGROUND_X86
STILLGROUND_KERNELS(avx2, 4);
STILLGROUND_KERNELS(avx512, 8);
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

const Kernels& best_kernels() {
  return *available_kernels().front();
}

}  // namespace stillground::march::fused
