#include "engine/march/fused/pack.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

extern const ModeKernels mode_kernels;

// A step of the amplitudes. Symbols, of one layer: x_m amplitude of mode m [K m2]; w_m the wall's part of it [1/m2];
// lambda_m its rate [1/m2]; alpha, rho c the ground's; h the step; q_1, q_2 the heat through the wall in the step's two
// stages [W/m]; p_i = h q_i/(rho c). With d_m = 1/(1 + gamma h alpha lambda_m) a stage is X = d (right side + gamma p).

namespace {

constexpr std::size_t factors = 5;  // of a mode, see ModeFactors
enum : std::size_t { decay, first_gain, second_gain, first_read, second_read };

/// A mode's factors at a pack of layers.
template <bool uniform>
inline Pack factor(const ModeFactors& f, std::size_t which, std::size_t mode, std::size_t k) {
  if constexpr (uniform) {
    return f.of_layer[(k * f.modes + mode) * factors + which] - Pack{};
  } else {
    return load(f.of_mode + (mode * factors + which) * f.row + k);
  }
}

/// N packs of layers, all of one ground (`uniform`) or not. If `steps`:
///   x_m <- k_m x_m + a_m p_1 + b_m p_2 (+ ramp, m = 0),
///   k = d (s_o + s_f d), a = s_f gamma d^2, b = gamma d;  s_o = second_of_old, s_f = second_of_first (ars222);
/// then what the wall reads at the next step's stages but for their heat:
///   first = sum_m w_m d_m x_m,   second = sum_m w_m k_m x_m.
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
        here = factor<uniform>(f, decay, m, of) * here + factor<uniform>(f, first_gain, m, of) * first_gained[n] +
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

/// The same for layers [from, end): as many packs side by side as the registers hold, of one ground as far as that
/// goes.
template <bool steps, class X>
void through_layers(const ModeFactors& factors_of_modes, std::size_t from, std::size_t end, X* x, const double* ramp,
                    const double* first_heat, const double* second_heat, double* first, double* second) {
  const ModeFactors f = factors_of_modes;
  constexpr std::size_t eight = 8, in_eight = eight / lanes;
  constexpr std::size_t together = lanes == 8 ? 4 : 2;  // packs
  const auto some = [&]<bool uniform, std::size_t N>(std::size_t k) {
    through_modes<uniform, steps, N>(f, k, x, ramp, first_heat, second_heat, first, second);
  };
  for (std::size_t k = from; k < end;) {
    const std::size_t uniform_run = f.uniform_run[k / eight];
    if (uniform_run == 0) {
      for (std::size_t n = 0; n < in_eight; ++n) some.template operator()<false, 1>(k + n * lanes);
      k += eight;
      continue;
    }
    const std::size_t left = (end - k) / eight, packs = (uniform_run < left ? uniform_run : left) * in_eight;
    const std::size_t last = k + packs * lanes;
    const std::size_t rounds = (packs + together - 1) / together;
    for (std::size_t round = 0; round < rounds; ++round) {
      // Nearly as many each round: a lone pack would wait for its own last sum at every mode.
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
    k = last;
  }
}

void read(const ModeFactors& f, std::size_t from, std::size_t end, const double* x, double* first, double* second) {
  through_layers<false>(f, from, end, x, nullptr, nullptr, nullptr, first, second);
}

void step(const ModeFactors& f, std::size_t from, std::size_t end, double* x, const double* ramp,
          const double* first_heat, const double* second_heat, double* first, double* second) {
  through_layers<true>(f, from, end, x, ramp, first_heat, second_heat, first, second);
}

/// to = second + (sum_m w_m a_m) h/(rho c) q_1: the wall at the second stage but for its own heat.
void second_wall(const ModeFactors& f, std::size_t from, std::size_t end, const double* read, const double* heat,
                 double* to) {
  for (std::size_t k = from; k < end; k += lanes) {
    store(to + k, load(read + k) + load(f.second_wall + k) * load(heat + k));
  }
}

}  // namespace

const ModeKernels mode_kernels = {read, step, second_wall};

}  // namespace stillground::march::fused::STILLGROUND_SET
