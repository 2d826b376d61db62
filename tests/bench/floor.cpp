#include <benchmark/benchmark.h>

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

/// What this machine can do at all: multiply-adds that wait for nothing, and numbers read and written again. Compiled
/// for one instruction set each; a set that the machine lacks is skipped.

namespace {

template <int lanes>
struct Register {
  typedef double Type __attribute__((vector_size(lanes * 8)));
};

/// Ten chains of multiply-adds: more than any of these machines has in flight.
template <int lanes>
[[gnu::always_inline]] inline double multiply_add(std::size_t rounds) {
  using Vector = typename Register<lanes>::Type;
  Vector chain[10], factor = Vector{} + 0.999999, add = Vector{} + 1e-6;
  for (Vector& one : chain) one = add;
  benchmark::DoNotOptimize(factor);
  benchmark::DoNotOptimize(add);
  for (std::size_t i = 0; i < rounds; ++i) {
#pragma GCC unroll 10
    for (Vector& one : chain) one = one * factor + add;
  }
  double sum = 0;
  for (const Vector& one : chain) sum += one[0];
  return sum;
}

template <int lanes>
[[gnu::always_inline]] inline void scale_and_add(const double* from, double* to, std::size_t n) {
  using Vector = typename Register<lanes>::Type;
  typedef Vector Loose __attribute__((aligned(8), may_alias));
  for (std::size_t i = 0; i + lanes <= n; i += lanes) {
    Loose& out = *reinterpret_cast<Loose*>(to + i);
    out = out * 0.999999 + *reinterpret_cast<const Loose*>(from + i);
  }
}

#define FOR_SET(set, lanes, features)                                                                            \
  __attribute__((target(features), noinline)) double multiply_add_##set(std::size_t n) {                         \
    return multiply_add<lanes>(n);                                                                               \
  }                                                                                                              \
  __attribute__((target(features), noinline)) void stream_##set(const double* from, double* to, std::size_t n) { \
    scale_and_add<lanes>(from, to, n);                                                                           \
  }

FOR_SET(baseline, 2, "sse2")
FOR_SET(avx2, 4, "avx2,fma")
FOR_SET(avx512, 8, "avx512f,avx512vl,fma")

struct Set {
  const char* name;
  int lanes;
  bool there;
  double (*multiply_add)(std::size_t);
  void (*stream)(const double*, double*, std::size_t);
};

void floor_of_arithmetic(benchmark::State& state, const Set& set) {
  constexpr std::size_t rounds = 100000;
  for (auto _ : state) benchmark::DoNotOptimize(set.multiply_add(rounds));
  state.counters["multiply_adds"] =
      benchmark::Counter(10.0 * set.lanes * rounds, benchmark::Counter::kIsIterationInvariantRate);
}

/// `bytes` of two arrays together; both read, one written.
void floor_of_memory(benchmark::State& state, const Set& set, std::size_t bytes) {
  const std::size_t n = bytes / 16;
  std::vector<double> from(n, 1e-6), to(n, 1.0);
  for (auto _ : state) {
    set.stream(from.data(), to.data(), n);
    benchmark::ClobberMemory();
  }
  state.counters["bytes"] =
      benchmark::Counter(24.0 * static_cast<double>(n), benchmark::Counter::kIsIterationInvariantRate);
}

[[maybe_unused]] const bool registered = [] {
  static const Set sets[] = {
      {"baseline", 2, true, multiply_add_baseline, stream_baseline},
      {"avx2", 4, __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"), multiply_add_avx2, stream_avx2},
      {"avx512", 8, __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512vl"), multiply_add_avx512,
       stream_avx512}};
  for (const Set& set : sets) {
    if (!set.there) continue;
    benchmark::RegisterBenchmark((std::string("floor/multiply_add/") + set.name).c_str(),
                                 [&set](benchmark::State& state) { floor_of_arithmetic(state, set); });
    for (const auto& [place, bytes] :
         {std::pair{"24_KiB", 24UL << 10}, {"256_KiB", 256UL << 10}, {"64_MiB", 64UL << 20}}) {
      benchmark::RegisterBenchmark(
          (std::string("floor/stream/") + place + "/" + set.name).c_str(),
          [&set, bytes = bytes](benchmark::State& state) { floor_of_memory(state, set, bytes); });
    }
  }
  return true;
}();

}  // namespace
