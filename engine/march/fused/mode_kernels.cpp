#include "engine/march/fused/pack.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

extern const ModeKernels mode_kernels;

namespace {

constexpr std::size_t factors = 5;  // of a mode, see ModeFactors
enum : std::size_t { keeps, first_gain, second_gain, first_read, second_read };

/// A mode's factors at a pack of layers.
template <bool uniform>
inline Pack factor(const ModeFactors& f, std::size_t which, std::size_t mode, std::size_t k) {
  if constexpr (uniform) {
    return f.of_layer[(k * f.modes + mode) * factors + which] - Pack{};
  } else {
    return load(f.of_mode + (mode * factors + which) * f.row + k);
  }
}

/// N packs of layers, all of one ground (`uniform`) or not, through all modes: a step if `steps`, then what is read.
template <bool uniform, bool steps, std::size_t N, class X>
inline __attribute__((always_inline)) void through_modes(const ModeFactors& f, std::size_t k, X* x, const double* ramp,
                                                         const double* first_heat, const double* second_heat,
                                                         double* first, double* second) {
  Pack one[N] = {}, two[N] = {}, first_gained[N] = {}, second_gained[N] = {};
  if constexpr (steps) {
    for (std::size_t n = 0; n < N; ++n) {
      const std::size_t at = k + n * lanes;
      first_gained[n] = load(f.per_heat + at) * load(first_heat + at);
      second_gained[n] = load(f.per_heat + at) * load(second_heat + at);
    }
  }
  for (std::size_t m = 0; m < f.modes; ++m) {
    for (std::size_t n = 0; n < N; ++n) {
      const std::size_t at = k + n * lanes;
      const std::size_t of = uniform ? k : at;  // one number for all packs
      Pack here = load(x + m * f.row + at);
      if constexpr (steps) {
        here = factor<uniform>(f, keeps, m, of) * here + factor<uniform>(f, first_gain, m, of) * first_gained[n] +
               factor<uniform>(f, second_gain, m, of) * second_gained[n];
        if (m == 0) here += load(ramp + at);
        store(x + m * f.row + at, here);
      }
      one[n] += factor<uniform>(f, first_read, m, of) * here;
      two[n] += factor<uniform>(f, second_read, m, of) * here;
    }
  }
  for (std::size_t n = 0; n < N; ++n) {
    store(first + k + n * lanes, one[n]);
    store(second + k + n * lanes, two[n]);
  }
}

/// As many packs side by side as the registers hold, of one ground as far as that goes.
template <bool steps, class X>
void through_layers(const ModeFactors& factors_of_modes, std::size_t from, std::size_t past, X* x, const double* ramp,
                    const double* first_heat, const double* second_heat, double* first, double* second) {
  const ModeFactors f = factors_of_modes;
  constexpr std::size_t eight = 8, in_eight = eight / lanes;
  constexpr std::size_t together = lanes == 8 ? 4 : 2;  // packs
  const auto some = [&]<bool uniform, std::size_t N>(std::size_t k) {
    through_modes<uniform, steps, N>(f, k, x, ramp, first_heat, second_heat, first, second);
  };
  for (std::size_t k = from; k < past;) {
    const std::size_t alike = f.alike[k / eight];
    if (alike == 0) {
      for (std::size_t n = 0; n < in_eight; ++n) some.template operator()<false, 1>(k + n * lanes);
      k += eight;
      continue;
    }
    const std::size_t left = (past - k) / eight, packs = (alike < left ? alike : left) * in_eight;
    const std::size_t end = k + packs * lanes;
    const std::size_t rounds = (packs + together - 1) / together;
    for (std::size_t round = 0; round < rounds; ++round) {
      // Nearly as many each round: a pack by itself waits on itself.
      switch (packs * (round + 1) / rounds - packs * round / rounds) {
        case 4:
          some.template operator()<true, together >= 4 ? 4 : 1>(k);
          k += 4 * lanes;
          break;
        case 3:
          some.template operator()<true, together >= 3 ? 3 : 1>(k);
          k += 3 * lanes;
          break;
        case 2:
          some.template operator()<true, 2>(k);
          k += 2 * lanes;
          break;
        default:
          some.template operator()<true, 1>(k);
          k += lanes;
      }
    }
    k = end;
  }
}

void read(const ModeFactors& f, std::size_t from, std::size_t past, const double* x, double* first, double* second) {
  through_layers<false>(f, from, past, x, nullptr, nullptr, nullptr, first, second);
}

void step(const ModeFactors& f, std::size_t from, std::size_t past, double* x, const double* ramp,
          const double* first_heat, const double* second_heat, double* first, double* second) {
  through_layers<true>(f, from, past, x, ramp, first_heat, second_heat, first, second);
}

void second_wall(const ModeFactors& f, std::size_t from, std::size_t past, const double* read, const double* heat,
                 double* to) {
  for (std::size_t k = from; k < past; k += lanes) {
    store(to + k, load(read + k) + load(f.second_wall + k) * load(heat + k));
  }
}

constexpr std::size_t stand_ins = 5;

/// What the stand-ins start a turn with: side by side, so that none waits on itself.
struct Started {
  Pack of[stand_ins] = {};

  Started(const TurnFactors& f, std::size_t k, const double* x) {
    for (std::size_t m = 0; m < f.slow; ++m) {
      const Pack here = load(x + m * f.row + k);
      for (std::size_t l = 0; l < stand_ins; ++l) of[l] += f.start[m * stand_ins + l] * here;
    }
  }
};

/// The slow modes take what their stand-ins gained.
void take_over(const TurnFactors& f, std::size_t k, double* x) {
  const Started started(f, k, x);
  Pack gained[stand_ins];
  for (std::size_t l = 0; l < stand_ins; ++l) {
    const std::size_t at = (f.slow + l) * f.row + k;
    gained[l] = load(x + at) - load(f.keeps + at) * started.of[l];
  }
  gained[0] -= load(x + f.excess_row() + k);
  for (std::size_t m = 0; m < f.slow; ++m) {
    const std::size_t at = m * f.row + k;
    Pack here = load(f.keeps + at) * load(x + at);
    for (std::size_t l = 0; l < stand_ins; ++l) here += f.share[m * stand_ins + l] * gained[l];
    store(x + at, here);
  }
}

void decay(const TurnFactors& f, std::size_t k, double* x) {
  for (std::size_t m = 0; m < f.modes; ++m) {
    const std::size_t at = f.row_of(m) + k;
    store(x + at, load(f.keeps + at) * load(x + at));
  }
}

void end_turn(const TurnFactors& factors_of_turn, std::size_t from, std::size_t past, double* x) {
  const TurnFactors f = factors_of_turn;
  for (std::size_t k = 0; k < f.row; k += lanes) {
    if (k >= from && k < past) {
      take_over(f, k, x);
    } else {
      decay(f, k, x);
    }
    for (std::size_t m = f.slow; m < f.modes; ++m) {
      const std::size_t at = f.row_of(m) + k;
      store(x + at, load(x + at) + load(x + f.added_row(m - f.slow) + k));
    }
  }
}

/// What one explicit step of axial conduction changes along a row; calls at(k, here, change) pack by pack, which may
/// write to the row.
template <class At>
inline __attribute__((always_inline)) void conduct_along(const TurnFactors& f, const double* row, At&& at) {
  Pack before{}, here = load(row);
  for (std::size_t k = 0; k < f.row; k += lanes) {
    const Pack after = k + lanes < f.row ? load(row + k + lanes) : Pack{};
    at(k, here, load(f.above + k) * (above(before, here) - here) + load(f.below + k) * (below(here, after) - here));
    before = here;
    here = after;
  }
}

/// Half a turn's steps of a row, in place.
void conduct_row(const TurnFactors& f, double* row) {
  for (int step = 0; step < f.axial_steps; ++step) {
    conduct_along(f, row, [&](std::size_t k, Pack here, Pack change) { store(row + k, here + change); });
  }
}

/// Half a turn's change of a row, which is left as it is, into `change`.
void change_of_row(const TurnFactors& f, const double* row, double* change) {
  if (f.axial_steps == 1) {
    conduct_along(f, row, [&](std::size_t k, Pack, Pack by) { store(change + k, by); });
    return;
  }
  for (std::size_t k = 0; k < f.row; k += lanes) store(change + k, load(row + k));
  conduct_row(f, change);
  for (std::size_t k = 0; k < f.row; k += lanes) store(change + k, load(change + k) - load(row + k));
}

/// Mode 0, the heat, and what of it the surface saw; then the other slow modes.
double conduct(const TurnFactors& factors_of_turn, double* x) {
  const TurnFactors f = factors_of_turn;
  double topmost = 0;
  for (int step = 0; step < f.axial_steps; ++step) {
    topmost += x[0];
    conduct_along(f, x, [&](std::size_t k, Pack here, Pack change) { store(x + k, here + change); });
  }
  for (std::size_t m = 1; m < f.slow; ++m) conduct_row(f, x + m * f.row);
  return topmost;
}

double start_turn(const TurnFactors& factors_of_turn, std::size_t from, std::size_t past, double* x, double* scratch) {
  const TurnFactors f = factors_of_turn;
  double *ramp = x + f.ramp_row(), *excess = x + f.excess_row();
  // What the slow modes are to the wall, and what half a turn changes in that: as in any one of them.
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
  // The slow modes have had half of the turn's axial conduction already and the other half will come at its end: what
  // the wall sees meanwhile goes from one to the other step by step, in the middle of each.
  for (std::size_t k = 0; k < f.row; k += lanes) {
    const Pack half = load(ramp + k), per_step = 2 / f.steps * half;
    store(ramp + k, per_step);
    if (k < from || k >= past) continue;
    const Pack first = load(excess + k) - half + 0.5 * per_step;
    const Started started(f, k, x);
    for (std::size_t l = 0; l < stand_ins; ++l) {
      store(x + (f.slow + l) * f.row + k, started.of[l] + (l == 0 ? first : Pack{}));
    }
    store(excess + k, first + 2 * half);
  }
  return topmost;
}

/// Four rings at N packs of layers side by side.
template <std::size_t N>
inline __attribute__((always_inline)) void rises_at(const TurnFactors& f, std::size_t k, const double* x,
                                                    double* theta) {
  constexpr std::size_t rings = 4;
  for (std::size_t i = 0; i < f.modes; i += rings) {
    const double* shape[rings];
    for (std::size_t r = 0; r < rings; ++r) shape[r] = f.shape + (i + r < f.modes ? i + r : i) * f.modes;
    Packs<N> sum[rings] = {};
    for (std::size_t m = 0; m < f.reaches[i]; ++m) {
      const Packs<N> here = load_packs<N>(x + f.row_of(m) + k);
      for (std::size_t r = 0; r < rings; ++r) {
        for (std::size_t n = 0; n < N; ++n) sum[r].of[n] += shape[r][m] * here.of[n];
      }
    }
    for (std::size_t r = 0; r < rings && i + r < f.modes; ++r) store_packs(theta + (i + r) * f.row + k, sum[r]);
  }
}

void rises(const TurnFactors& factors_of_turn, const double* x, double* theta) {
  const TurnFactors f = factors_of_turn;
  std::size_t k = 0;
  for (; k + lanes < f.row; k += 2 * lanes) rises_at<2>(f, k, x, theta);
  if (k < f.row) rises_at<1>(f, k, x, theta);
}

}  // namespace

const ModeKernels mode_kernels = {read, step, second_wall, end_turn, conduct, start_turn, rises};

}  // namespace stillground::march::fused::STILLGROUND_SET
