#include "validation/reference_solutions/field_equations.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

namespace stillground::reference_solutions {

namespace {

enum Slot : std::size_t { down, up, even_inner, even_outer, odd_inner, odd_outer, ring };

std::size_t first_layer(const FieldBore& bore) {
  const auto filled = [](double fraction) { return fraction > 0; };
  return static_cast<std::size_t>(std::find_if(bore.fraction.begin(), bore.fraction.end(), filled) -
                                  bore.fraction.begin());
}

}  // namespace

FieldEquations::FieldEquations(Field field) : field_(std::move(field)), first_(first_layer(field_.bores.front())) {
  for (std::size_t i = 0; i + 1 < field_.r_faces.size(); ++i) {
    const double inner = field_.r_faces[i], outer = field_.r_faces[i + 1];
    const double width = std::log(outer / inner);
    node_.push_back(std::sqrt(inner * outer) * std::exp(width * width / 18));
    area_.push_back(std::numbers::pi * (outer * outer - inner * inner));
  }
  double resistance = field_.surface_film > 0 ? 1 / field_.surface_film : 0;
  for (std::size_t k = 0; k < layers(); ++k) {
    const double half = (field_.z_faces[k + 1] - field_.z_faces[k]) / 2 / field_.conductivity[k];
    between_.push_back(1 / (resistance + half));
    resistance = half;
  }
  for (const FieldBore& bore : field_.bores) {
    if (first_layer(bore) != first_) throw std::invalid_argument("the bores start in different layers");
  }
  layer_ = 1 + field_.bores.size() * (6 + rings());
}

std::vector<double> FieldEquations::at_rest(double time) const {
  std::vector<double> y(size(), 0.0), undisturbed(layers());
  field_.undisturbed(time, undisturbed);
  for (std::size_t b = 0; b < field_.bores.size(); ++b) {
    for (std::size_t k = 0; k < layers(); ++k) {
      if (field_.bores[b].fraction[k] <= 0) continue;
      for (const Slot slot : {down, up, even_inner, even_outer}) y[at(k, b) + slot] = undisturbed[k];
    }
  }
  return y;
}

double FieldEquations::outlet(const double* y) const {
  double sum = 0, members = 0;
  for (std::size_t b = 0; b < field_.bores.size(); ++b) {
    sum += field_.bores[b].members * y[at(first_, b) + up];
    members += field_.bores[b].members;
  }
  return sum / members;
}

void FieldEquations::add_ground(std::size_t bore, const double* y, double* rate) const {
  const double two_pi = 2 * std::numbers::pi;
  for (std::size_t k = 0; k < layers(); ++k) {
    const double height = field_.z_faces[k + 1] - field_.z_faces[k];
    const double* here = y + at(k, bore) + ring;
    double* change = rate + at(k, bore) + ring;
    for (std::size_t i = 0; i < rings(); ++i) {
      double heat = 0;  // per height
      if (i > 0) heat += two_pi * field_.conductivity[k] / std::log(node_[i] / node_[i - 1]) * (here[i - 1] - here[i]);
      if (i + 1 < rings())
        heat += two_pi * field_.conductivity[k] / std::log(node_[i + 1] / node_[i]) * (here[i + 1] - here[i]);
      const double above = k > 0 ? y[at(k - 1, bore) + ring + i] : 0;
      double axial = between_[k] * (above - here[i]);
      if (k + 1 < layers()) axial += between_[k + 1] * (y[at(k + 1, bore) + ring + i] - here[i]);
      change[i] = (heat / area_[i] + axial / height) / field_.heat_capacity[k];
    }
  }
}

void FieldEquations::add_bore(std::size_t bore, double inlet, const Flow& flow, const double* y,
                              std::span<const double> undisturbed, double* rate) const {
  const FieldBore& own = field_.bores[bore];
  const auto filled = [&](std::size_t k) { return k < layers() && own.fraction[k] > 0; };
  for (std::size_t k = first_; filled(k); ++k) {
    const double length = own.fraction[k] * (field_.z_faces[k + 1] - field_.z_faces[k]);
    const Section& section = flow.sections[k];
    const double* here = y + at(k, bore);
    double* change = rate + at(k, bore);
    // A flowing layer exchanges at the mean of what enters and leaves it.
    const double enters_down = k == first_ ? inlet : y[at(k - 1, bore) + down];
    const double enters_up = filled(k + 1) ? y[at(k + 1, bore) + up] : here[down];
    const double mean_down = flow.heat_rate > 0 ? (enters_down + here[down]) / 2 : here[down];
    const double mean_up = flow.heat_rate > 0 ? (enters_up + here[up]) / 2 : here[up];
    const double to_even = ((mean_down + mean_up) / 2 - here[even_inner]) / section.even.inner;
    const double to_odd = ((mean_down - mean_up) / 2 - here[odd_inner]) / section.odd.inner;
    const double through_even = (here[even_inner] - here[even_outer]) / section.even.middle;
    const double through_odd = (here[odd_inner] - here[odd_outer]) / section.odd.middle;

    double outside = undisturbed[k];
    for (const Share& share : own.neighbours) outside += share.weight * y[at(k, share.source) + ring + share.ring];
    const double first_half = std::log(node_[0] / field_.r_faces[0]) / (2 * std::numbers::pi * field_.conductivity[k]);
    const double to_ground = (here[even_outer] - outside - here[ring]) / (section.even.outer + first_half);

    const double heat_capacity = section.fluid_capacity * length;
    change[down] = (flow.heat_rate * (enters_down - here[down]) - length * (to_even / 2 + to_odd)) / heat_capacity;
    change[up] = (flow.heat_rate * (enters_up - here[up]) - length * (to_even / 2 - to_odd)) / heat_capacity;
    change[even_inner] = (to_even - through_even) / section.even.inner_capacity;
    change[even_outer] = (through_even - to_ground) / section.even.outer_capacity;
    change[odd_inner] = (to_odd - through_odd) / section.odd.inner_capacity;
    change[odd_outer] = (through_odd - here[odd_outer] / section.odd.outer) / section.odd.outer_capacity;
    change[ring] += own.fraction[k] * to_ground / (field_.heat_capacity[k] * area_[0]);
  }
}

void FieldEquations::rate(double time, const double* y, double heat, const Flow& flow, double* rate,
                          bool homogeneous) const {
  std::fill(rate, rate + size(), 0.0);
  std::vector<double> undisturbed(layers(), 0.0);
  if (!homogeneous) field_.undisturbed(time, undisturbed);
  double members = 0;
  for (const FieldBore& bore : field_.bores) members += bore.members;
  double inlet = outlet(y);
  rate[integral()] = inlet;
  if (flow.heat_rate > 0 && !homogeneous) inlet += heat / (flow.heat_rate * members);
  for (std::size_t b = 0; b < field_.bores.size(); ++b) {
    add_ground(b, y, rate);
    add_bore(b, inlet, flow, y, undisturbed, rate);
  }
}

}  // namespace stillground::reference_solutions
