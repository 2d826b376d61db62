#include "validation/reference_solutions/segmented_field.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

#include "validation/reference_solutions/dense.hpp"

namespace stillground::reference_solutions {

namespace {

constexpr int parts = 16;  // segments of a bore
constexpr double first_knot = 60, knot_spacing = 0.1;
constexpr double first_step = 900, growth = 1.25;  // of the steps of what is held
constexpr std::size_t near = 6;                    // knots that an interpolation takes

/// Integral of erf from 0.
double ierf(double x) {
  return x * std::erf(x) + std::expm1(-x * x) / std::sqrt(std::numbers::pi);
}

}  // namespace

SegmentedField::SegmentedField(const SegmentedGround& ground, const std::vector<SegmentedBore>& bores, double longest)
    : bores_(bores), radius_(ground.radius), times_{0} {
  for (std::size_t b = 0; b < bores.size(); ++b) {
    const auto edge = [&](int i) {
      return bores[b].top + bores[b].length / 2 * (1 + std::tanh(3.5 * (2.0 * i / parts - 1)) / std::tanh(3.5));
    };
    for (int i = 0; i < parts; ++i) segments_.push_back({b, edge(i), edge(i + 1)});
  }
  tabulate(ground, longest);
}

void SegmentedField::tabulate(const SegmentedGround& ground, double longest) {
  const auto s = [&](std::size_t knot) {
    const double time = first_knot * std::exp(knot_spacing * static_cast<double>(knot));
    return 1 / std::sqrt(4 * ground.conductivity / ground.heat_capacity * time);
  };
  const auto knots = static_cast<std::size_t>(std::log(longest / first_knot) / knot_spacing) + near;
  std::vector<double> rise(size() * size(), 0.0);
  add_panel(ground, s(0), std::max(2 * s(0), 8 / radius_), 24, rise);
  table_.push_back(rise);
  for (std::size_t knot = 1; knot < knots; ++knot) {
    add_panel(ground, s(knot), s(knot - 1), 6, rise);
    table_.push_back(rise);
  }
}

/// Adds to `rise` the part of 1/(4 pi k l_i) int exp(-d^2 s^2) I_ij(s)/s d(ln s) between two values of s; I_ij: second
/// differences of ierf over the edges of both segments and their mirror images.
void SegmentedField::add_panel(const SegmentedGround& ground, double low, double high, std::size_t order,
                               std::vector<double>& rise) {
  const double half = (std::log(high) - std::log(low)) / 2;
  for (const QuadratureNode& node : gauss_rule(order)) {
    const double s = low * std::exp(half * (node.at + 1));
    const auto at = [&](double own, double other) { return ierf(s * std::abs(own - other)) + ierf(s * (own + other)); };
    for (std::size_t i = 0; i < size(); ++i) {
      const Segment& own = segments_[i];
      for (std::size_t j = 0; j < size(); ++j) {
        const Segment& other = segments_[j];
        const double apart =
            std::hypot(bores_[own.bore].x - bores_[other.bore].x, bores_[own.bore].y - bores_[other.bore].y);
        const double distance = std::max(apart, radius_);
        const double far = std::exp(-distance * distance * s * s);
        if (far == 0) continue;
        const double both =
            at(own.to, other.from) + at(own.from, other.to) - at(own.to, other.to) - at(own.from, other.from);
        rise[j * size() + i] +=
            node.weight * half / s * far * both / (4 * std::numbers::pi * ground.conductivity * own.length());
      }
    }
  }
}

/// Weights of the table's entries for a step of heat that is `age` old: the polynomial through the nearest in ln t.
std::vector<double> SegmentedField::at_knots(double age) const {
  std::vector<double> weights(table_.size(), 0.0);
  if (age <= 0) return weights;
  const double place = std::log(age / first_knot) / knot_spacing;
  const double last = static_cast<double>(table_.size() - near);
  if (place < 0 || place > last + static_cast<double>(near) - 1)
    throw std::domain_error("a time outside the table of responses");
  const auto first = static_cast<std::size_t>(std::clamp(std::ceil(place) - 3, 0.0, last));
  for (std::size_t i = 0; i < near; ++i) {
    double weight = 1;
    for (std::size_t other = 0; other < near; ++other) {
      if (other == i) continue;
      const double gap = static_cast<double>(i) - static_cast<double>(other);
      weight *= (place - static_cast<double>(first + other)) / gap;
    }
    weights[first + i] = weight;
  }
  return weights;
}

/// Adds to T_wall what S - T_in adds: -sum q_j [l_j/(2 W) + G_ij/(W^2 R_a)], G_ij the mean over segment i of the
/// integral of the heat below from the top down, for 1 W/m in segment j. A bore that stands takes no heat.
void SegmentedField::fluid_rows(const std::vector<SegmentedLoop>& loops, std::vector<double>& matrix) const {
  const std::size_t n = size() + 1;
  for (std::size_t i = 0; i < size(); ++i) {
    const Segment& own = segments_[i];
    const SegmentedLoop& loop = loops[own.bore];
    if (loop.heat_rate <= 0) {
      std::fill_n(matrix.begin() + static_cast<std::ptrdiff_t>(i * n), n, 0.0);
      matrix[i * n + i] = 1;
      continue;
    }
    matrix[i * n + i] += loop.local;
    matrix[i * n + size()] = -1;
    for (std::size_t j = own.bore * parts; j < (own.bore + 1) * parts; ++j) {
      const Segment& other = segments_[j];
      const double l = other.length(), above = other.from - bores_[own.bore].top;
      double passed = l * ((own.from + own.to) / 2 - bores_[own.bore].top);  // of a segment above the other
      if (i == j) passed = l * above + l * l / 3;
      if (i > j) passed = l * above + l * l / 2;
      matrix[i * n + j] += l / (2 * loop.heat_rate) + passed / (loop.heat_rate * loop.heat_rate * loop.internal);
    }
  }
}

void SegmentedField::step(double heat, const std::vector<SegmentedLoop>& loops, double seconds) {
  const std::size_t m = size(), n = m + 1;
  const double now = times_.back() + seconds;
  std::vector<std::vector<double>> past(table_.size());
  for (std::size_t k = 0; k < heats_.size(); ++k) {
    const std::vector<double> since = at_knots(now - times_[k]), until = at_knots(now - times_[k + 1]);
    for (std::size_t knot = 0; knot < table_.size(); ++knot) {
      const double weight = since[knot] - until[knot];
      if (weight == 0) continue;
      if (past[knot].empty()) past[knot].assign(m, 0.0);
      for (std::size_t j = 0; j < m; ++j) past[knot][j] += weight * heats_[k][j];
    }
  }
  std::vector<double> matrix(n * n, 0.0), right(n, 0.0);
  const std::vector<double> own = at_knots(seconds);
  for (std::size_t knot = 0; knot < table_.size(); ++knot) {
    for (std::size_t j = 0; j < m; ++j) {
      const double* by = table_[knot].data() + j * m;
      for (std::size_t i = 0; i < m && own[knot] != 0; ++i) matrix[i * n + j] += own[knot] * by[i];
      for (std::size_t i = 0; i < m && !past[knot].empty(); ++i) right[i] -= by[i] * past[knot][j];
    }
  }
  fluid_rows(loops, matrix);
  for (std::size_t i = 0; i < m; ++i) {
    if (loops[segments_[i].bore].heat_rate <= 0) right[i] = 0;
    matrix[m * n + i] = segments_[i].length();
  }
  right[m] = heat;
  std::vector<double> answer = solved(std::move(matrix), std::move(right));
  inlet_ = answer.back();
  answer.pop_back();
  heats_.push_back(std::move(answer));
  times_.push_back(now);
}

SegmentedField::State SegmentedField::hold(double heat, const std::vector<SegmentedLoop>& loops, double seconds) {
  double done = 0;
  for (double next = first_step; done < seconds; next *= growth) {
    const double now = seconds - done < 1.5 * next ? seconds - done : next;
    step(heat, loops, now);
    done += now;
  }
  double flow = 0;
  for (const SegmentedLoop& loop : loops) flow += loop.heat_rate;
  State state{inlet_, inlet_ - heat / flow, std::vector<double>(bores_.size(), 0.0)};
  for (std::size_t i = 0; i < size(); ++i) {
    state.heat[segments_[i].bore] += heats_.back()[i] * segments_[i].length();
  }
  return state;
}

}  // namespace stillground::reference_solutions
