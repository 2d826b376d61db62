#include "engine/march/fused/pack.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

extern const RingKernels ring_kernels;

// The rings of a group. Symbols, of ring i (from the wall out) and layer k: theta own rise of the ground [K], in y at
// the step's start and Y after its first stage; e elimination's part; D, c, d the factors of RadialFactors (inverse =
// 1/D); L axial conduction, (L v)_k = a_k (v_{k-1} - v_k) + b_k (v_{k+1} - v_k) [1/s]; h the step. Old, fresh,
// axial_old and axial_fresh: RingFactors.

namespace {

/// A factor of the rings at N packs of layers: one number a ring where all of them are of one ground.
template <bool uniform>
struct Factor {
  const double* at;
  std::size_t ring;

  Factor(const double* of_ring, const double* of_layer, const RingFactors& f, std::size_t k)
      : at(uniform ? of_layer + k * f.rings : of_ring + k), ring(uniform ? 1 : f.row) {}

  Pack operator()(std::size_t i, std::size_t n) const {
    const double* p = at + i * ring;
    if constexpr (uniform) {
      return *p - Pack{};
    } else {
      return load(p + n * lanes);
    }
  }
};

/// Calls body<whether the packs are of one ground, how many>(k) for all packs of layers, up to four at a time: each is
/// a chain of its own along the rings, and while one waits for its last result the others go on.
template <class Body>
inline __attribute__((always_inline)) void packs(const RingFactors& f, Body&& body) {
  for (std::size_t k = 0; k < f.row;) {
    const std::size_t uniform_run = f.uniform_run[k / lanes], left = (f.row - k) / lanes;
    if (uniform_run >= 4) {
      body.template operator()<true, 4>(k);
      k += 4 * lanes;
    } else if (uniform_run >= 2) {
      body.template operator()<true, 2>(k);
      k += 2 * lanes;
    } else if (left >= 2) {
      body.template operator()<false, 2>(k);
      k += 2 * lanes;
    } else {
      body.template operator()<false, 1>(k);
      k += lanes;
    }
  }
}

/// Inwards along the rings: e_i = (1/D_i) r_i + c_i e_{i+1}, r = base + L from with L's rates times a time; `first`:
/// base and from are the same.
template <bool first, bool uniform, std::size_t N>
inline __attribute__((always_inline)) void inwards(const RingFactors& f, std::size_t k, const double* rate_above,
                                                   const double* rate_below, const double* base, const double* from,
                                                   double* e) {
  const Factor<uniform> inverse(f.inverse, f.inverse_of_layer, f, k), carry(f.carry, f.carry_of_layer, f, k);
  const double* top = k > 0 ? from + k - lanes : nothing;
  const double* bottom = k + N * lanes < f.row ? from + k + N * lanes : nothing;
  const std::size_t top_step = k > 0 ? f.row : 0, bottom_step = k + N * lanes < f.row ? f.row : 0;
  const Packs<N> up_rate = load_packs<N>(rate_above + k), down_rate = load_packs<N>(rate_below + k);
  Packs<N> own;
  for (std::size_t n = 0; n < N; ++n) own.of[n] = (first ? 1.0 : 0.0) - up_rate.of[n] - down_rate.of[n];
  Packs<N> outer = {};  // the outermost carries nothing: beyond it is adiabatic
  for (std::size_t i = f.rings; i-- > 0;) {
    const Packs<N> here = load_packs<N>(from + i * f.row + k);
    const Pack over = load(top + i * top_step), under = load(bottom + i * bottom_step);
    for (std::size_t n = 0; n < N; ++n) {
      const Pack up = above(n > 0 ? here.of[n - 1] : over, here.of[n]);
      const Pack down = below(here.of[n], n + 1 < N ? here.of[n + 1] : under);
      Pack right = own.of[n] * here.of[n];
      if constexpr (!first) right += load(base + i * f.row + k + n * lanes);
      right = right + up_rate.of[n] * up + down_rate.of[n] * down;  // in this order two fused multiply-adds
      outer.of[n] = inverse(i, n) * right + carry(i, n) * outer.of[n];
    }
    store_packs(e + i * f.row + k, outer);
  }
}

// Factors are copied: stores through a Pack might change what a reference refers to, for all the compiler knows.

/// r = y + gamma h L y.
void first_inwards(const RingFactors& factors, const double* y, double* e) {
  const RingFactors f = factors;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    inwards<true, uniform, N>(f, k, f.first_above, f.first_below, y, y, e);
  });
}

/// r = (old y + fresh Y) + h L (axial_old y + axial_fresh Y), what first_outwards has left in `y` and `stage`.
void second_inwards(const RingFactors& factors, double* y, const double* stage) {
  const RingFactors f = factors;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    inwards<false, uniform, N>(f, k, f.above, f.below, y, stage, y);
  });
}

/// Outwards along the rings: theta_i = e_i + d_i theta_{i-1}; calls at(i, theta) for each.
template <bool uniform, std::size_t N, class At>
inline __attribute__((always_inline)) void outwards(const RingFactors& f, std::size_t k, const double* e, At&& at) {
  const Factor<uniform> drop(f.drop, f.drop_of_layer, f, k);
  Packs<N> inner = load_packs<N>(e + k);
  at(0, inner);
  for (std::size_t i = 1; i < f.rings; ++i) {
    for (std::size_t n = 0; n < N; ++n) inner.of[n] = load(e + i * f.row + k + n * lanes) + drop(i, n) * inner.of[n];
    at(i, inner);
  }
}

/// Y = theta; y <- old y + fresh Y, stage <- axial_old y + axial_fresh Y.
void first_outwards(const RingFactors& factors, double* y, double* stage) {
  const RingFactors f = factors;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    outwards<uniform, N>(f, k, stage, [&](std::size_t i, const Packs<N>& theta) {
      for (std::size_t n = 0; n < N; ++n) {
        const std::size_t here = i * f.row + k + n * lanes;
        const Pack before = load(y + here);
        store(y + here, f.old * before + f.fresh * theta.of[n]);
        store(stage + here, f.axial_old * before + f.axial_fresh * theta.of[n]);
      }
    });
  });
}

/// y <- theta.
void second_outwards(const RingFactors& factors, double* y) {
  const RingFactors f = factors;
  packs(f, [&]<bool uniform, std::size_t N>(std::size_t k) {
    outwards<uniform, N>(f, k, y, [&](std::size_t i, const Packs<N>& theta) { store_packs(y + i * f.row + k, theta); });
  });
}

}  // namespace

const RingKernels ring_kernels = {first_inwards, first_outwards, second_inwards, second_outwards};

}  // namespace stillground::march::fused::STILLGROUND_SET
