#include "engine/march/fused/layer_recurrence.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

extern const BoreKernels bore_kernels;

// One bore within an implicit stage. Symbols, of layer k: d and u the streams that leave it, down and up, one entry a
// pass; x_j its old in-bore rows; E its far end, what the wall of the mode 0 looks out to; R, A, B, U = u part of B,
// D = d part of A the factors of BoreFactors. Streams per layer above and below:
//   (d, u)_k = R_k (x, E)_k + A_k d_{k-1} + B_k g_{k+1},
// g_{k+1} what the layers below bring up if nothing comes down to them, d_{k-1} what comes down.

namespace {

/// The packs of layers with a bore in them: [from, to).
inline std::size_t from_pack(const BoreFactors& f) {
  return f.first / lanes * lanes;
}
inline std::size_t to_pack(const BoreFactors& f) {
  return (f.end + lanes - 1) / lanes * lanes;
}

/// From the toe upwards, nothing coming down:
///   E = T0 + N + ahead (N - N_before) + e_0,
///   p = R (x, E),   g_k = p^u_k + U_k g_{k+1} (g = 0 below the toe),   p^d_k + B^d_k g_{k+1};
/// `work`: E, then the streams so far; `up` = g of the bore's first layer.
template <std::size_t M>
void eliminate_upward(const BoreFactors& factors, const double* x, const Outside& around, const double* e, double* work,
                      double* up) {
  const BoreFactors f = factors;
  const Outside outside = around;
  constexpr std::size_t streams = 2 * M, inputs = 3 * streams;
  const std::size_t row = f.row;
  Pack carried[M] = {};
  for (std::size_t k = to_pack(f); k > from_pack(f);) {
    k -= lanes;
    const Pack now = load(outside.now + k);
    const Pack far =
        load(outside.undisturbed + k) + now + outside.ahead * (now - load(outside.before + k)) + load(e + k);
    store(work + k, far);
    Pack down[M], rises[M];  // streams that go down, that go up
    const auto part = [&](std::size_t s) -> Pack& { return s < M ? down[s] : rises[s - M]; };
    for (std::size_t s = 0; s < streams; ++s) part(s) = load(f.response + (s * (inputs + 1) + inputs) * row + k) * far;
    for (std::size_t j = 0; j < inputs; ++j) {
      const Pack old = load(x + j * row + k);
      for (std::size_t s = 0; s < streams; ++s) part(s) += load(f.response + (s * (inputs + 1) + j) * row + k) * old;
    }
    if (f.flows) {
      scan<M, false>(f.up_runs + k, row, rises);
      add_product<M>(f.up_carries + k, row, carried, rises);
      Pack entering[M];
      for (std::size_t p = 0; p < M; ++p) entering[p] = below(rises[p], carried[p]);
      add_product<M>(f.from_below + k, row, entering, down);
      for (std::size_t p = 0; p < M; ++p) carried[p] = everywhere(rises[p][0]);
    }
    for (std::size_t s = 0; s < streams; ++s) store(work + (1 + s) * row + k, part(s));
  }
  for (std::size_t p = 0; p < M; ++p) up[p] = work[(1 + M + p) * row + f.first];
}

/// What leaves a pack of layers and what enters its downward streams.
template <std::size_t M>
struct Streams {
  Pack down[M] = {}, up[M] = {}, entering[M] = {};
};

/// In-bore rows, heat through the wall and innermost ring of a pack of layers. With b_s = what enters stream s + what
/// leaves it (twice its mean in the layer), T_o and T_i the nodes of mode m (old: rows of x), E its far end (0, m > 0):
///   T_o(alone) = outer_from_old T_o,old + outer_from_far E
///   T_i        = inner_from_old T_i,old + inner_from_outer T_o(alone) + sum_s inner_from_streams_ms b_s
///   T_o        = T_o(alone) + outer_from_inner T_i
///   q_w        = conductance (T_o - E), m = 0;   heat += seconds q_w;   theta_0 = e_0 + wall_response q_w
/// x <- old x + fresh (streams and nodes).
template <std::size_t M>
inline __attribute__((always_inline)) void finish(const BoreFactors& f, std::size_t k, const Streams<M>& own,
                                                  const Pack (&both)[2 * M], double* work, double seconds, double old,
                                                  double fresh, double* x, double* innermost, double* heat) {
  constexpr std::size_t streams = 2 * M;
  const std::size_t row = f.row;
  const Pack far = load(work + k);
  // Each old row is read once: a store in between would have the compiler read it again.
  const auto put = [&](std::size_t at, Pack before, Pack value) { store(x + at, old * before + fresh * value); };
  for (std::size_t s = 0; s < streams; ++s)
    put(s * row + k, load(x + s * row + k), s < M ? own.down[s] : own.up[s - M]);
  for (std::size_t m = 0; m < streams; ++m) {
    const std::size_t at = m * row + k, node = (streams + 2 * m) * row + k;
    const Pack old_inner = load(x + node), old_outer = load(x + node + row);
    Pack alone = load(f.outer_from_old + at) * old_outer;
    if (m == 0) alone += load(f.outer_from_far + k) * far;
    Pack inner = load(f.inner_from_old + at) * old_inner + load(f.inner_from_outer + at) * alone;
    for (std::size_t s = 0; s < streams; ++s)
      inner += load(f.inner_from_streams + (m * streams + s) * row + k) * both[s];
    const Pack outer = alone + load(f.outer_from_inner + at) * inner;
    put(node, old_inner, inner);
    put(node + row, old_outer, outer);
    if (m > 0) continue;
    const Pack through = load(f.conductance + k) * (outer - far);
    store(work + k, through);
    store(heat + k, load(heat + k) + seconds * through);
    store(innermost + k, load(innermost + k) + load(f.wall_response + k) * through);
  }
}

/// From the top downwards, T_in of each pass coming down into the first layer:
///   d_k = p^d_k + D_k d_{k-1},   u_k = p^u_k + A^u_k d_{k-1},   then every layer as in `finish`.
template <std::size_t M>
void substitute_downward(const BoreFactors& factors, double* work, const double* inlets, double seconds, double old,
                         double fresh, double* x, double* innermost, double* heat) {
  const BoreFactors f = factors;
  const std::size_t row = f.row, from = from_pack(f), to = to_pack(f);
  const double* parts = work + row;
  Streams<M> above_here, here;
  const auto finish_pack = [&](std::size_t k, const Streams<M>& own, const Streams<M>& next) {
    Pack both[2 * M];
    for (std::size_t p = 0; p < M; ++p) {
      // At the toe what came down goes up.
      const Pack enters = below(own.up[p], next.up[p]) + load(f.toe + k) * own.down[p];
      both[p] = own.entering[p] + own.down[p];
      both[M + p] = enters + own.up[p];
    }
    if (!f.flows) {
      // What enters stagnant fluid is what is there: the mean of both is the layer's own.
      for (std::size_t p = 0; p < M; ++p) {
        both[p] = own.down[p] + own.down[p];
        both[M + p] = own.up[p] + own.up[p];
      }
    }
    finish<M>(f, k, own, both, work, seconds, old, fresh, x, innermost, heat);
  };
  for (std::size_t k = from; k < to; k += lanes) {
    for (std::size_t p = 0; p < M; ++p) {
      here.down[p] = load(parts + p * row + k);
      here.up[p] = load(parts + (M + p) * row + k);
    }
    if (f.flows) {
      Pack in[M], carried[M];
      for (std::size_t p = 0; p < M; ++p) {
        in[p] = load(f.top + k) * inlets[p];
        carried[p] = everywhere(above_here.down[p][lanes - 1]);
      }
      const double* from_inlet = f.from_inlet + k;
      add_product<M>(from_inlet, row, in, here.down);
      scan<M, true>(f.down_runs + k, row, here.down);
      add_product<M>(f.down_carries + k, row, carried, here.down);
      for (std::size_t p = 0; p < M; ++p) here.entering[p] = above(above_here.down[p], here.down[p]) + in[p];
      add_product<M>(from_inlet + M * M * row, row, here.entering, here.up);
    }
    if (k > from) finish_pack(k - lanes, above_here, here);
    above_here = here;
  }
  finish_pack(to - lanes, here, {});
}

/// y += sum_a f_a r_a over `count` responses r.
template <std::size_t count>
void add_some(std::size_t rows, std::size_t row, std::size_t from, std::size_t end, const double* const* responses,
              const double* factors, double* y) {
  const double* response[count];
  Pack factor[count];
  for (std::size_t a = 0; a < count; ++a) {
    response[a] = responses[a];
    factor[a] = everywhere(factors[a]);
  }
  for (std::size_t r = 0; r < rows; ++r) {
    for (std::size_t at = r * row + from; at < r * row + end; at += lanes) {
      Pack sum = load(y + at);
      for (std::size_t a = 0; a < count; ++a) sum += factor[a] * load(response[a] + at);
      store(y + at, sum);
    }
  }
}

void superpose(std::size_t rows, std::size_t row, std::size_t from, std::size_t end, std::size_t count,
               const double* const* responses, const double* factors, double* y) {
  // Stages of an hour are an even number, at the usual step four.
  std::size_t a = 0;
  for (; a + 4 <= count; a += 4) add_some<4>(rows, row, from, end, responses + a, factors + a, y);
  for (; a + 2 <= count; a += 2) add_some<2>(rows, row, from, end, responses + a, factors + a, y);
}

}  // namespace

const BoreKernels bore_kernels = {
    {eliminate_upward<1>, eliminate_upward<2>}, {substitute_downward<1>, substitute_downward<2>}, superpose};

}  // namespace stillground::march::fused::STILLGROUND_SET
