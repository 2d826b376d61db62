#pragma once

/// Marks a kernel to be compiled for several instruction sets, the machine's best chosen when the program starts: one
/// binary runs anywhere. Contraction to fused multiply-adds is off here and no such kernel reorders a sum, so that
/// these agree to the bit. Those of march/fused, which contract, do not: march/fused/instruction_sets.hpp.
#if defined(__x86_64__) && defined(__gnu_linux__) && !defined(__SANITIZE_ADDRESS__) && \
    !defined(__SANITIZE_THREAD__) && !defined(__clang__)
#define STILLGROUND_CLONED __attribute__((target_clones("avx512f", "avx2", "default")))
#else
#define STILLGROUND_CLONED
#endif
