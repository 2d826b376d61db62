// Compiled once for each instruction set, STILLGROUND_SET its name and STILLGROUND_LANES the doubles in a register.
#include "engine/march/fused/kernels.hpp"

namespace stillground::march::fused {

extern const Kernels STILLGROUND_SET;

namespace {

constexpr std::size_t lanes = STILLGROUND_LANES;
using Pack = double __attribute__((vector_size(8 * STILLGROUND_LANES), may_alias));

inline Pack load(const double* p) {
  return *reinterpret_cast<const Pack*>(p);
}
inline void store(double* p, Pack v) {
  *reinterpret_cast<Pack*>(p) = v;
}

/// The layers above and below those of a pack: shifted by one, the gap filled from the pack before or after.
#if STILLGROUND_LANES == 8
inline Pack above(Pack before, Pack here) {
  return __builtin_shufflevector(before, here, 7, 8, 9, 10, 11, 12, 13, 14);
}
inline Pack below(Pack here, Pack after) {
  return __builtin_shufflevector(here, after, 1, 2, 3, 4, 5, 6, 7, 8);
}
#elif STILLGROUND_LANES == 4
inline Pack above(Pack before, Pack here) {
  return __builtin_shufflevector(before, here, 3, 4, 5, 6);
}
inline Pack below(Pack here, Pack after) {
  return __builtin_shufflevector(here, after, 1, 2, 3, 4);
}
#else
inline Pack above(Pack before, Pack here) {
  return __builtin_shufflevector(before, here, 1, 2);
}
inline Pack below(Pack here, Pack after) {
  return __builtin_shufflevector(here, after, 1, 2);
}
#endif

/// Nothing lies above the first pack of a row or below the last.
alignas(64) constexpr double nothing[lanes] = {};

/// N packs of layers, one below the other, that go through the rings side by side: each waits on itself alone.
template <std::size_t N>
struct Packs {
  Pack of[N];
};

template <std::size_t N>
inline Packs<N> load_packs(const double* p) {
  Packs<N> result;
  for (std::size_t n = 0; n < N; ++n) result.of[n] = load(p + n * lanes);
  return result;
}

template <std::size_t N>
inline void store_packs(double* p, const Packs<N>& v) {
  for (std::size_t n = 0; n < N; ++n) store(p + n * lanes, v.of[n]);
}

/// A factor of the rings at N packs of layers: one number a ring and pack where its layers are of one ground.
template <bool uniform, std::size_t N>
struct Factor {
  const double* at;
  std::size_t ring, pack;

  Factor(const double* of_ring, const double* of_layer, const RingFactors& f, std::size_t k)
      : at(uniform ? of_layer + k * f.rings : of_ring + k),
        ring(uniform ? 1 : f.row),
        pack(uniform ? lanes * f.rings : lanes) {}

  Pack operator()(std::size_t i, std::size_t n) const {
    const double* p = at + i * ring + n * pack;
    if constexpr (uniform) {
      return *p - Pack{};
    } else {
      return load(p);
    }
  }
};

/// Calls body<whether the packs are of one ground each, how many>(k) for all packs of layers, two at a time.
template <class Body>
inline __attribute__((always_inline)) void packs(const RingFactors& f, Body&& body) {
  std::size_t k = 0;
  for (; k + lanes < f.row; k += 2 * lanes) {
    if (f.uniform[k / lanes] && f.uniform[k / lanes + 1]) {
      body.template operator()<true, 2>(k);
    } else {
      body.template operator()<false, 2>(k);
    }
  }
  if (k < f.row) body.template operator()<false, 1>(k);
}

/// Inwards along the rings: e = inverse (right side) + carry e of the ring outside. The right side is `base` and axial
/// conduction of `from`.
template <bool uniform, std::size_t N>
inline __attribute__((always_inline)) void inwards(const RingFactors& f, std::size_t k, const double* rate_above,
                                                   const double* rate_below, const double* base, const double* from,
                                                   const double* beyond, double* e) {
  const Factor<uniform, N> inverse(f.inverse, f.inverse_of_layer, f, k), carry(f.carry, f.carry_of_layer, f, k);
  const double* top = k > 0 ? from + k - lanes : nothing;
  const double* bottom = k + N * lanes < f.row ? from + k + N * lanes : nothing;
  const std::size_t top_step = k > 0 ? f.row : 0, bottom_step = k + N * lanes < f.row ? f.row : 0;
  const Packs<N> up_rate = load_packs<N>(rate_above + k), down_rate = load_packs<N>(rate_below + k);
  Packs<N> outer = load_packs<N>(beyond + k);
  for (std::size_t i = f.rings; i-- > 0;) {
    const Packs<N> here = load_packs<N>(from + i * f.row + k);
    const Pack first = load(top + i * top_step), last = load(bottom + i * bottom_step);
    for (std::size_t n = 0; n < N; ++n) {
      const Pack up = above(n > 0 ? here.of[n - 1] : first, here.of[n]);
      const Pack down = below(here.of[n], n + 1 < N ? here.of[n + 1] : last);
      const Pack right = load(base + i * f.row + k + n * lanes) + up_rate.of[n] * (up - here.of[n]) +
                         down_rate.of[n] * (down - here.of[n]);
      outer.of[n] = inverse(i, n) * right + carry(i, n) * outer.of[n];
    }
    store_packs(e + i * f.row + k, outer);
  }
}

// Factors are copied: stores through a Pack might change what a reference refers to, for all the compiler knows.

void first_inwards(const RingFactors& factors, const double* y, const double* beyond, double* e) {
  const RingFactors f = factors;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    inwards<uniform, N>(f, k, f.first_above, f.first_below, y, y, beyond, e);
  });
}

void second_inwards(const RingFactors& factors, double* y, const double* stage, const double* beyond) {
  const RingFactors f = factors;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    inwards<uniform, N>(f, k, f.above, f.below, y, stage, beyond, y);
  });
}

/// Outwards along the rings: theta = e + drop theta of the ring inside; calls at(i, theta) for each.
template <bool uniform, std::size_t N, class At>
inline __attribute__((always_inline)) void outwards(const RingFactors& f, const Crossing& crossing, std::size_t k,
                                                    const double* e, At&& at) {
  const Factor<uniform, N> drop(f.drop, f.drop_of_layer, f, k);
  Packs<N> inner = load_packs<N>(e + k);
  at(0, inner);
  const auto onwards = [&](std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i) {
      for (std::size_t n = 0; n < N; ++n) {
        inner.of[n] = load(e + i * f.row + k + n * lanes) + drop(i, n) * inner.of[n];
      }
      at(i, inner);
    }
  };
  onwards(1, crossing.ring);
  if (crossing.ring > 0) {
    const Packs<N> before = inner;
    onwards(crossing.ring, crossing.ring + 1);
    for (std::size_t n = 0; n < N; ++n) {
      double* sum = crossing.sum + k + n * lanes;
      const Pack conductance = crossing.weight * load(crossing.conductance + k + n * lanes);
      store(sum, load(sum) + conductance * (before.of[n] - inner.of[n]));
    }
  }
  onwards(crossing.ring + 1, f.rings);
}

void first_outwards(const RingFactors& factors, const Crossing& through, double* y, double* stage) {
  const RingFactors f = factors;
  const Crossing crossing = through;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    outwards<uniform, N>(f, crossing, k, stage, [&](std::size_t i, const Packs<N>& theta) {
      for (std::size_t n = 0; n < N; ++n) {
        const std::size_t here = i * f.row + k + n * lanes;
        const Pack before = load(y + here);
        store(y + here, f.old * before + f.fresh * theta.of[n]);
        store(stage + here, f.axial_old * before + f.axial_fresh * theta.of[n]);
      }
    });
  });
}

void second_outwards(const RingFactors& factors, const Crossing& through, double* y) {
  const RingFactors f = factors;
  const Crossing crossing = through;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    outwards<uniform, N>(f, crossing, k, y,
                         [&](std::size_t i, const Packs<N>& theta) { store_packs(y + i * f.row + k, theta); });
  });
}

void add_heat(std::size_t row, const double* response, double scale, const double* heat, double* y) {
  for (std::size_t k = 0; k < row; k += lanes) {
    store(y + k, load(y + k) + scale * load(response + k) * load(heat + k));
  }
}

/// The packs of layers with bore in them: [from, to).
inline std::size_t from_pack(const BoreFactors& f) {
  return f.first / lanes * lanes;
}
inline std::size_t to_pack(const BoreFactors& f) {
  return (f.past + lanes - 1) / lanes * lanes;
}

template <std::size_t M>
void bore_rest(const BoreFactors& factors, const double* x, const Outside& around, const double* e, double* work) {
  const BoreFactors f = factors;
  const Outside outside = around;
  constexpr std::size_t streams = 2 * M, inputs = 3 * streams;
  const std::size_t row = f.row;
  for (std::size_t k = from_pack(f); k < to_pack(f); k += lanes) {
    const Pack now = load(outside.now + k);
    const Pack far =
        load(outside.undisturbed + k) + now + outside.ahead * (now - load(outside.before + k)) + load(e + k);
    store(work + k, far);
    Pack part[streams];
    for (std::size_t s = 0; s < streams; ++s) part[s] = load(f.answer + (s * (inputs + 1) + inputs) * row + k) * far;
    for (std::size_t j = 0; j < inputs; ++j) {
      const Pack old = load(x + j * row + k);
      for (std::size_t s = 0; s < streams; ++s) part[s] += load(f.answer + (s * (inputs + 1) + j) * row + k) * old;
    }
    for (std::size_t s = 0; s < streams; ++s) store(work + (1 + s) * row + k, part[s]);
  }
}

// Unrolled by hand's word: the compiler would keep what goes from layer to layer in memory, and wait for it.

template <std::size_t M, std::size_t Count>
void upwards_together(const BoreFactors* const* bores, double* const* works, double* up) {
  constexpr std::size_t streams = 2 * M;
  const std::size_t row = bores[0]->row, first = bores[0]->first, past = bores[0]->past;
  double below[Count][M] = {};
  double* parts[Count];
  const double* from_below[Count];
  for (std::size_t b = 0; b < Count; ++b) {
    parts[b] = works[b] + row;
    from_below[b] = bores[b]->from_below;
  }
  for (std::size_t k = past; k-- > first;) {
#pragma GCC unroll 4
    for (std::size_t b = 0; b < Count; ++b) {
      double here[streams];
#pragma GCC unroll 4
      for (std::size_t s = 0; s < streams; ++s) {
        here[s] = parts[b][s * row + k];
#pragma GCC unroll 2
        for (std::size_t p = 0; p < M; ++p) here[s] += from_below[b][(s * M + p) * row + k] * below[b][p];
        parts[b][s * row + k] = here[s];
      }
#pragma GCC unroll 2
      for (std::size_t p = 0; p < M; ++p) below[b][p] = here[M + p];
    }
  }
  for (std::size_t b = 0; b < Count; ++b) {
    for (std::size_t p = 0; p < M; ++p) up[2 * b + p] = below[b][p];
  }
}

template <std::size_t M, std::size_t Count>
void downwards_together(const BoreFactors* const* bores, double* const* works, const double* inlets) {
  constexpr std::size_t streams = 2 * M;
  const std::size_t row = bores[0]->row, first = bores[0]->first, past = bores[0]->past;
  double in[Count][M];
  double* stream[Count];
  const double* from_inlet[Count];
  for (std::size_t b = 0; b < Count; ++b) {
    stream[b] = works[b] + row;
    from_inlet[b] = bores[b]->from_inlet;
    for (std::size_t p = 0; p < M; ++p) in[b][p] = inlets[2 * b + p];
  }
  for (std::size_t k = first; k < past; ++k) {
#pragma GCC unroll 4
    for (std::size_t b = 0; b < Count; ++b) {
      double* entering = stream[b] + streams * row + k;
      double here[streams];
#pragma GCC unroll 4
      for (std::size_t s = 0; s < streams; ++s) {
        here[s] = stream[b][s * row + k];
#pragma GCC unroll 2
        for (std::size_t p = 0; p < M; ++p) here[s] += from_inlet[b][(s * M + p) * row + k] * in[b][p];
        stream[b][s * row + k] = here[s];
      }
#pragma GCC unroll 2
      for (std::size_t p = 0; p < M; ++p) {
        entering[p * row] = in[b][p];
        // What leaves upwards enters the layer above. (The row before is the downward one: nothing is there above the
        // bore's first layer, or what stands there is padding.)
        entering[(M + p) * row - 1] = here[M + p];
        in[b][p] = here[p];
      }
    }
  }
  // At the toe what came down goes up.
  for (std::size_t b = 0; b < Count; ++b) {
    for (std::size_t p = 0; p < M; ++p) stream[b][(streams + M + p) * row + past - 1] = in[b][p];
  }
}

/// Side by side only where all go down alike: bores that end elsewhere, or stand, are taken by themselves.
bool alike(std::size_t count, const BoreFactors* const* bores) {
  for (std::size_t b = 0; b < count; ++b) {
    if (!bores[b]->flows || bores[b]->first != bores[0]->first || bores[b]->past != bores[0]->past) return false;
  }
  return count == side_by_side;
}

/// What enters standing fluid is what is there: the mean of both is the layer's own.
template <std::size_t M>
void standing(const BoreFactors& f, double* work) {
  const std::size_t size = 2 * M * f.row;
  for (std::size_t k = 0; k < size; k += lanes) store(work + f.row + size + k, load(work + f.row + k));
}

template <std::size_t M>
void bore_upwards(std::size_t count, const BoreFactors* const* bores, double* const* works, double* up) {
  if (alike(count, bores)) return upwards_together<M, side_by_side>(bores, works, up);
  for (std::size_t b = 0; b < count; ++b) {
    if (bores[b]->flows) upwards_together<M, 1>(bores + b, works + b, up + 2 * b);
  }
}

template <std::size_t M>
void bore_downwards(std::size_t count, const BoreFactors* const* bores, double* const* works, const double* inlets) {
  if (alike(count, bores)) return downwards_together<M, side_by_side>(bores, works, inlets);
  for (std::size_t b = 0; b < count; ++b) {
    if (bores[b]->flows) {
      downwards_together<M, 1>(bores + b, works + b, inlets + 2 * b);
    } else {
      standing<M>(*bores[b], works[b]);
    }
  }
}

template <std::size_t M>
void bore_finish(const BoreFactors& factors, const double* work, double seconds, double old, double fresh, double* x,
                 double* innermost, double* heat) {
  const BoreFactors f = factors;
  constexpr std::size_t streams = 2 * M;
  const std::size_t row = f.row;
  const double *stream = work + row, *entering = work + (1 + streams) * row;
  for (std::size_t k = from_pack(f); k < to_pack(f); k += lanes) {
    const Pack far = load(work + k);
    const auto put = [&](std::size_t at, Pack value) { store(x + at, old * load(x + at) + fresh * value); };
    Pack both[streams];
    for (std::size_t s = 0; s < streams; ++s) {
      const Pack own = load(stream + s * row + k);
      both[s] = load(entering + s * row + k) + own;
      put(s * row + k, own);
    }
    for (std::size_t m = 0; m < streams; ++m) {
      const std::size_t at = m * row + k, node = (streams + 2 * m) * row + k;
      Pack alone = load(f.keeps_outer + at) * load(x + node + row);
      if (m == 0) alone += load(f.outward + k) * far;
      Pack inner = load(f.keeps_inner + at) * load(x + node) + load(f.forth + at) * alone;
      for (std::size_t s = 0; s < streams; ++s) inner += load(f.from_streams + (m * streams + s) * row + k) * both[s];
      const Pack outer = alone + load(f.back + at) * inner;
      put(node, inner);
      put(node + row, outer);
      if (m > 0) continue;
      const Pack through = load(f.conductance + k) * (outer - far);
      store(heat + k, load(heat + k) + seconds * through);
      store(innermost + k, load(innermost + k) + load(f.wall_response + k) * through);
    }
  }
}

}  // namespace

const Kernels STILLGROUND_SET = {
    STILLGROUND_NAME,
    lanes,
    first_inwards,
    first_outwards,
    second_inwards,
    second_outwards,
    add_heat,
    {bore_rest<1>, bore_rest<2>},
    {bore_upwards<1>, bore_upwards<2>},
    {bore_downwards<1>, bore_downwards<2>},
    {bore_finish<1>, bore_finish<2>},
};

}  // namespace stillground::march::fused
