#pragma once

/// Marks a kernel to be compiled for several instruction sets, the machine's best chosen when the program starts: one
/// binary runs anywhere. Contraction to fused multiply-adds is off everywhere and no kernel reorders a sum, so the sets
/// agree to the bit.
#if defined(__x86_64__) && defined(__gnu_linux__) && !defined(__SANITIZE_ADDRESS__) && \
    !defined(__SANITIZE_THREAD__) && !defined(__clang__)
#define STILLGROUND_CLONED __attribute__((target_clones("avx512f", "avx2", "default")))
#else
#define STILLGROUND_CLONED
#endif
