#include "validation/reference_solutions/plug_flow_bore.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace stillground::reference_solutions {

namespace {

/// Nodes in a row: C_i dT_i/dt = G_i (T_{i-1} - T_i) + G_{i+1} (T_{i+1} - T_i); beyond the last stands zero, before the
/// first nothing.
struct Row {
  std::vector<double> capacity;     // C_i
  std::vector<double> conductance;  // from node i to the next; the last to zero, 0 if nothing passes

  /// A trapezoidal step of `time` [s] by elimination.
  void step(double time, double* values) const {
    const std::size_t n = capacity.size();
    thread_local std::vector<double> ratio, right;
    ratio.resize(n), right.resize(n);
    for (std::size_t i = 0; i < n; ++i) {
      const double before = i > 0 ? conductance[i - 1] : 0, after = conductance[i];
      const double from_before = i > 0 ? before * (values[i - 1] - values[i]) : 0;
      const double from_after = after * ((i + 1 < n ? values[i + 1] : 0) - values[i]);
      const double c = 2 * capacity[i] / time;
      right[i] = c * values[i] + from_before + from_after;
      const double pivot = c + before + after - (i > 0 ? before * ratio[i - 1] : 0);
      ratio[i] = after / pivot;
      right[i] = (right[i] + (i > 0 ? before * right[i - 1] : 0)) / pivot;
    }
    for (std::size_t i = n; i-- > 0;) values[i] = right[i] + (i + 1 < n ? ratio[i] * values[i + 1] : 0);
  }
};

constexpr int rings = 32;
constexpr double reach = 3;  // of the rings [m]: days

/// Both streams' mean, grout, ground.
Row even_row(const PlugFlowBore& b, const Chain& chain) {
  const double ratio = std::pow(reach / b.radius, 1.0 / rings), whole = 2 * std::numbers::pi * b.conductivity;
  Row row{{2 * b.fluid, chain.inner_capacity, chain.outer_capacity},
          {1 / chain.inner, 1 / chain.middle, 1 / (chain.outer + std::log(ratio) / 2 / whole)}};
  for (int i = 0; i < rings; ++i) {
    const double inside = b.radius * std::pow(ratio, i), outside = inside * ratio;
    row.capacity.push_back(b.heat_capacity * std::numbers::pi * (outside * outside - inside * inside));
    row.conductance.push_back(i + 1 < rings ? whole / std::log(ratio) : 0);
  }
  return row;
}

/// Half their difference, the odd nodes, zero.
Row odd_row(const PlugFlowBore& b, const Chain& chain) {
  return {{b.fluid, chain.inner_capacity, chain.outer_capacity}, {1 / chain.inner, 1 / chain.middle, 1 / chain.outer}};
}

/// What stands at one depth, as the rows: the streams' mean and half difference first.
struct Piece {
  std::vector<double> even, odd;
};

}  // namespace

std::vector<double> returning_fluid(const PlugFlowBore& bore, const std::vector<PlugFlowHour>& hours, int cells) {
  const auto n = static_cast<std::size_t>(cells);
  const double step = bore.fluid * bore.length / bore.heat_rate / cells;
  const Row even[] = {even_row(bore, bore.standing.even), even_row(bore, bore.flowing.even)};
  const Row odd[] = {odd_row(bore, bore.standing.odd), odd_row(bore, bore.flowing.odd)};
  std::vector<Piece> pieces(n, {std::vector<double>(even[0].capacity.size()), std::vector<double>(3)});
  std::vector<double> down(n), up(n), means;
  const auto exchange = [&](bool flows) {
    for (std::size_t i = 0; i < n; ++i) {
      Piece& piece = pieces[i];
      piece.even[0] = (down[i] + up[i]) / 2;
      piece.odd[0] = (down[i] - up[i]) / 2;
      even[flows].step(step / 2, piece.even.data());
      odd[flows].step(step / 2, piece.odd.data());
      down[i] = piece.even[0] + piece.odd[0];
      up[i] = piece.even[0] - piece.odd[0];
    }
  };
  long done = 0;
  for (const PlugFlowHour& hour : hours) {
    const long last = std::lround(3600.0 * static_cast<double>(means.size() + 1) / step);
    double sum = 0;
    const long first = done;
    for (; done < last; ++done) {
      exchange(hour.flows);
      if (hour.flows) {
        const double back = up.front();  // leaves within this step
        std::rotate(up.begin(), up.begin() + 1, up.end());
        up.back() = down.back();
        std::rotate(down.begin(), down.end() - 1, down.end());
        down.front() = back + hour.heat / bore.heat_rate;
        sum += back;
      }
      exchange(hour.flows);
    }
    means.push_back(sum / static_cast<double>(last - first));
  }
  return means;
}

}  // namespace stillground::reference_solutions
