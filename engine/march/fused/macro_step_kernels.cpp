#include "engine/march/fused/pack.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

extern const MacroStepKernels macro_step_kernels;

// What a macro-step of n steps does to the amplitudes. Symbols, of one layer: x_m amplitude of mode m [K m2], slow or
// quick; X_l that of reduced mode l; k_m what a step leaves of either; the other factors as in MacroStepFactors.

namespace {

constexpr std::size_t reduced_modes = 5;  // Multirate::reduced_modes

/// X_l = sum_m start_ml x_m over the slow modes m: the reduced modes' start. Side by side, so that no sum waits for
/// itself.
struct Started {
  Pack of[reduced_modes] = {};

  Started(const MacroStepFactors& f, std::size_t k, const double* x) {
    for (std::size_t m = 0; m < f.slow; ++m) {
      const Pack here = load(x + m * f.row + k);
      for (std::size_t l = 0; l < reduced_modes; ++l) of[l] += f.start[m * reduced_modes + l] * here;
    }
  }
};

/// The slow modes gain what their reduced modes gained, those less what axial conduction lent the first (excess):
///   G_l = X_l - k_l^n X_l(start) - excess (l = 0),   x_m <- k_m^n x_m + sum_l share_ml G_l.
void recover_slow(const MacroStepFactors& f, std::size_t k, double* x) {
  const Started started(f, k, x);
  Pack gained[reduced_modes];
  for (std::size_t l = 0; l < reduced_modes; ++l) {
    const std::size_t at = (f.slow + l) * f.row + k;
    gained[l] = load(x + at) - load(f.decay + at) * started.of[l];
  }
  gained[0] -= load(x + f.excess_row() + k);
  for (std::size_t m = 0; m < f.slow; ++m) {
    const std::size_t at = m * f.row + k;
    Pack here = load(f.decay + at) * load(x + at);
    for (std::size_t l = 0; l < reduced_modes; ++l) here += f.share[m * reduced_modes + l] * gained[l];
    store(x + at, here);
  }
}

/// Without heat through the wall: x_m <- k_m^n x_m.
void decay(const MacroStepFactors& f, std::size_t k, double* x) {
  for (std::size_t m = 0; m < f.modes; ++m) {
    const std::size_t at = f.row_of(m) + k;
    store(x + at, load(f.decay + at) * load(x + at));
  }
}

/// Slow modes as above, then x_m <- x_m + added_m of the quick ones, in all layers.
void end_step(const MacroStepFactors& factors, std::size_t from, std::size_t end, double* x) {
  const MacroStepFactors f = factors;
  for (std::size_t k = 0; k < f.row; k += lanes) {
    if (k >= from && k < end) {
      recover_slow(f, k, x);
    } else {
      decay(f, k, x);
    }
    for (std::size_t m = f.slow; m < f.modes; ++m) {
      const std::size_t at = f.row_of(m) + k;
      store(x + at, load(x + at) + load(x + f.added_row(m - f.slow) + k));
    }
  }
}

/// One explicit step of axial conduction along a row v:
///   change_k = a_k (v_{k-1} - v_k) + b_k (v_{k+1} - v_k);
/// calls at(k, v, change) pack by pack, which may write to the row.
template <class At>
inline __attribute__((always_inline)) void conduct_along(const MacroStepFactors& f, const double* row, At&& at) {
  Pack before{}, here = load(row);
  for (std::size_t k = 0; k < f.row; k += lanes) {
    const Pack after = k + lanes < f.row ? load(row + k + lanes) : Pack{};
    at(k, here, load(f.above + k) * (above(before, here) - here) + load(f.below + k) * (below(here, after) - here));
    before = here;
    here = after;
  }
}

/// v <- C v, C: half a macro-step's axial steps.
void conduct_row(const MacroStepFactors& f, double* row) {
  for (int step = 0; step < f.axial_steps; ++step) {
    conduct_along(f, row, [&](std::size_t k, Pack here, Pack change) { store(row + k, here + change); });
  }
}

/// change = C v - v.
void change_of_row(const MacroStepFactors& f, const double* row, double* change) {
  if (f.axial_steps == 1) {
    conduct_along(f, row, [&](std::size_t k, Pack, Pack by) { store(change + k, by); });
    return;
  }
  for (std::size_t k = 0; k < f.row; k += lanes) store(change + k, load(row + k));
  conduct_row(f, change);
  for (std::size_t k = 0; k < f.row; k += lanes) store(change + k, load(change + k) - load(row + k));
}

/// x_m <- C x_m of the slow modes; mode 0 is the heat, of which the surface saw the topmost layer: sum of x_0 there
/// before each axial step.
double conduct(const MacroStepFactors& factors, double* x) {
  const MacroStepFactors f = factors;
  double topmost = 0;
  for (int step = 0; step < f.axial_steps; ++step) {
    topmost += x[0];
    conduct_along(f, x, [&](std::size_t k, Pack here, Pack change) { store(x + k, here + change); });
  }
  for (std::size_t m = 1; m < f.slow; ++m) conduct_row(f, x + m * f.row);
  return topmost;
}

/// With v_m the wall's part of mode m for one of the first reduced mode, C as above, H the macro-step:
///   slow modes    x_m <- C x_m now, and again at the end; their wall, V = sum_m v_m x_m, has changed by c = C V - V
///   and
///                 will by about as much: read as V + c (2 j - 1)/n in the middle of step j of n;
///   quick modes   axial conduction adds at the rate (C x_m - x_m)/(H/2), held over the macro-step: the steady
///   amplitude
///                 under it, s_m = (C x_m - x_m)/((H/2) alpha lambda_m), is taken out before and put back after it;
///   reduced modes X_l = sum_m start_ml x_m; the first, which does not decay, also lends the wall what is missing:
///                 X_0 + sum_m v_m s_m - c + c/n, and 2 c/n more after every step.
/// So X_0 ends too high by excess = sum_m v_m s_m - c + c/n + 2 c.
double start_step(const MacroStepFactors& factors, std::size_t from, std::size_t end, double* x, double* scratch) {
  const MacroStepFactors f = factors;
  double *ramp = x + f.ramp_row(), *excess = x + f.excess_row();
  // V, then c in `ramp`.
  for (std::size_t k = 0; k < f.row; k += lanes) {
    Pack wall{};
    for (std::size_t m = 0; m < f.slow; ++m) wall += f.weight[m] * load(x + m * f.row + k);
    store(scratch + k, wall);
    store(excess + k, Pack{});
  }
  change_of_row(f, scratch, ramp);
  const double topmost = conduct(f, x);
  for (std::size_t m = f.slow; m < f.modes; ++m) {
    double *mode = x + f.row_of(m), *added = x + f.added_row(m - f.slow);
    change_of_row(f, mode, added);
    for (std::size_t k = 0; k < f.row; k += lanes) {
      const Pack steady = load(f.steady + (m - f.slow) * f.row + k) * load(added + k);
      store(added + k, steady);
      store(mode + k, load(mode + k) - steady);
      store(excess + k, load(excess + k) + f.weight[m] * steady);
    }
  }
  for (std::size_t k = 0; k < f.row; k += lanes) {
    const Pack half = load(ramp + k), per_step = 2 / f.steps * half;
    store(ramp + k, per_step);
    if (k < from || k >= end) continue;
    const Pack first = load(excess + k) - half + 0.5 * per_step;
    const Started started(f, k, x);
    for (std::size_t l = 0; l < reduced_modes; ++l) {
      store(x + (f.slow + l) * f.row + k, started.of[l] + (l == 0 ? first : Pack{}));
    }
    store(excess + k, first + 2 * half);
  }
  return topmost;
}

/// theta_i = sum_m S_im x_m, over the modes that reach ring i or one farther out: four rings at N packs of layers side
/// by side.
template <std::size_t N>
inline __attribute__((always_inline)) void rises_at(const MacroStepFactors& f, std::size_t k, const double* x,
                                                    double* theta) {
  constexpr std::size_t rings = 4;
  for (std::size_t i = 0; i < f.modes; i += rings) {
    const double* shape[rings];
    for (std::size_t r = 0; r < rings; ++r) shape[r] = f.shape + (i + r < f.modes ? i + r : i) * f.modes;
    Packs<N> sum[rings] = {};
    for (std::size_t m = 0; m < f.active_modes[i]; ++m) {
      const Packs<N> here = load_packs<N>(x + f.row_of(m) + k);
      for (std::size_t r = 0; r < rings; ++r) {
        for (std::size_t n = 0; n < N; ++n) sum[r].of[n] += shape[r][m] * here.of[n];
      }
    }
    for (std::size_t r = 0; r < rings && i + r < f.modes; ++r) store_packs(theta + (i + r) * f.row + k, sum[r]);
  }
}

void rises(const MacroStepFactors& factors, const double* x, double* theta) {
  const MacroStepFactors f = factors;
  std::size_t k = 0;
  for (; k + lanes < f.row; k += 2 * lanes) rises_at<2>(f, k, x, theta);
  if (k < f.row) rises_at<1>(f, k, x, theta);
}

}  // namespace

const MacroStepKernels macro_step_kernels = {start_step, end_step, conduct, rises};

}  // namespace stillground::march::fused::STILLGROUND_SET
