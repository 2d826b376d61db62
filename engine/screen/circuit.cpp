#include "engine/screen/circuit.hpp"

#include <numeric>

namespace stillground::screen {

using Eigen::RowVectorXd;
using Eigen::VectorXd;

double CircuitShape::depth() const {
  return std::accumulate(wall_heights.begin(), wall_heights.end(), 0.0);
}

double CircuitShape::part_of(std::size_t wall) const {
  return wall_heights[wall % wall_heights.size()] / (static_cast<double>(bores) * depth());
}

Circuit::Circuit(CircuitShape shape, NearGround ground) : shape_(std::move(shape)), ground_(std::move(ground)) {}

// Places: by piece of wall from the top down, so that what hangs together lies together; in each the layers of all
// bores, then all bores' terms and heat.

std::size_t Circuit::block() const {
  return shape_.bores * (shape_.layers_of_a_wall * 3 * streams() + terms() + 1);
}

Circuit::Index Circuit::stream(std::size_t bore, std::size_t layer, std::size_t s) const {
  const std::size_t piece = layer / shape_.layers_of_a_wall, within = layer % shape_.layers_of_a_wall;
  return static_cast<Index>(piece * block() + (within * shape_.bores + bore) * 3 * streams() + s);
}

Circuit::Index Circuit::node(std::size_t bore, std::size_t layer, std::size_t mode, std::size_t which) const {
  return stream(bore, layer, streams() + 2 * mode + which);
}

Circuit::Index Circuit::term(std::size_t wall, std::size_t j) const {
  const std::size_t bore = wall / shape_.walls_of_a_bore(), piece = wall % shape_.walls_of_a_bore();
  const std::size_t each = terms() + 1;
  return static_cast<Index>(piece * block() + shape_.bores * shape_.layers_of_a_wall * 3 * streams() + bore * each + j);
}

Circuit::Index Circuit::heat(std::size_t wall) const {
  return term(wall, terms());
}

std::size_t Circuit::wall_of(std::size_t bore, std::size_t layer) const {
  return bore * shape_.walls_of_a_bore() + layer / shape_.layers_of_a_wall;
}

/// But for what a layer's own heat does at once.
Circuit::Sum Circuit::wall(std::size_t wall) const {
  Sum sum{{size() + static_cast<Index>(wall), 1}, {heat(wall), ground_.drift[piece_of(wall)]}};
  for (std::size_t j = 0; j < terms(); ++j) sum.emplace_back(term(wall, j), 1);
  return sum;
}

/// What flows into a layer.
Circuit::Sum Circuit::inlet(std::size_t bore, std::size_t layer, std::size_t s, double heat_rate) const {
  const std::size_t passes = shape_.passes, last = shape_.layers() - 1;
  if (s >= passes) return {{layer == last ? stream(bore, last, s - passes) : stream(bore, layer + 1, s), 1}};
  if (layer > 0) return {{stream(bore, layer - 1, s), 1}};
  if (s > 0) return {{stream(bore, 0, passes + s - 1), 1}};
  if (bore > 0) return {{stream(bore - 1, 0, 2 * passes - 1), 1}};
  return {{stream(shape_.bores - 1, 0, 2 * passes - 1), 1}, {size() + walls(), 1 / heat_rate}};
}

void Circuit::add(Rates& rates, Index row, const Sum& sum, double factor) const {
  for (const auto& [place, part] : sum) {
    if (place < size()) {
      rates.of_state(row, place) += factor * part;
    } else {
      rates.of_inputs(row, place - size()) += factor * part;
    }
  }
}

// Of a layer of height dz, c_s the capacity of stream s, w = m c:
//   c_s dT_s/dt = (w/dz) (T_in,s - T_s) - sum_m gives_ms q_m,   q_m = (sum_s reads_ms (T_s + T_in,s)/2 - N_m)/inner_m
//   C_m dN_m/dt = q_m - (N_m - O_m)/middle_m,   C'_m dO_m/dt = (N_m - O_m)/middle_m - out_m
// and out_m = O_m/outer_m, of mode 0 (O_0 - wall)/(outer_0 + instant).
void Circuit::add_layer(Rates& rates, std::size_t bore, std::size_t layer, const bore::Network& network,
                        double heat_rate) const {
  std::vector<Sum> into;
  for (std::size_t s = 0; s < streams(); ++s) {
    const Index own = stream(bore, layer, s);
    into.push_back(heat_rate > 0 ? inlet(bore, layer, s, heat_rate) : Sum{{own, 1}});
    const double carried = heat_rate / (shape_.layer_height(layer) * network.capacity.at(s));
    add(rates, own, into.back(), carried);
    add(rates, own, {{own, 1}}, -carried);
  }
  const std::size_t piece = wall_of(bore, layer);
  for (std::size_t m = 0; m < streams(); ++m) {
    const bore::Mode& mode = network.modes.at(m);
    const Index inner = node(bore, layer, m, 0), outer = node(bore, layer, m, 1);
    const bool stores = mode.inner_capacity > 0;
    const double resistance = stores ? mode.inner : mode.resistance();
    Sum flux;
    if (stores) flux.emplace_back(inner, -1 / resistance);
    for (std::size_t s = 0; s < streams(); ++s) {
      const double half = mode.reads.at(s) / 2 / resistance;
      flux.emplace_back(stream(bore, layer, s), half);
      for (const auto& [place, part] : into[s]) flux.emplace_back(place, half * part);
    }
    for (std::size_t s = 0; s < streams(); ++s)
      add(rates, stream(bore, layer, s), flux, -mode.gives.at(s) / network.capacity.at(s));
    if (!stores) continue;
    const Sum between{{inner, 1 / mode.middle}, {outer, -1 / mode.middle}};
    const double last = 1 / (m == 0 ? mode.outer + ground_.instant[piece_of(piece)] : mode.outer);
    Sum out{{outer, last}};
    if (m == 0) {
      for (const auto& [place, part] : wall(piece)) out.emplace_back(place, -last * part);
      add_wall_heat(rates, piece, out);
    }
    add(rates, inner, flux, 1 / mode.inner_capacity);
    add(rates, inner, between, -1 / mode.inner_capacity);
    add(rates, outer, between, 1 / mode.outer_capacity);
    add(rates, outer, out, -1 / mode.outer_capacity);
  }
}

/// `heat` of one of the layers that share the wall: dy_j/dt = (A_j q' - y_j)/tau_j, q' their mean.
void Circuit::add_wall_heat(Rates& rates, std::size_t wall, const Sum& heat) const {
  const double share = 1 / static_cast<double>(shape_.layers_of_a_wall);
  for (std::size_t j = 0; j < terms(); ++j) {
    const double answer = ground_.terms.amplitudes[piece_of(wall)][j] / ground_.terms.time_constants[j];
    add(rates, term(wall, j), heat, share * answer);
  }
  add(rates, this->heat(wall), heat, share);
}

Rates Circuit::rates(const bore::Network& network, double heat_rate) const {
  Rates rates{RowMatrix::Zero(size(), size()), RowMatrix::Zero(size(), walls() + 1)};
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < shape_.layers(); ++k) add_layer(rates, b, k, network, heat_rate);
  }
  for (std::size_t w = 0; w < shape_.walls(); ++w) {
    for (std::size_t j = 0; j < terms(); ++j)
      add(rates, term(w, j), {{term(w, j), 1}}, -1 / ground_.terms.time_constants[j]);
  }
  return rates;
}

RowVectorXd Circuit::outlet() const {
  return RowVectorXd::Unit(size(), stream(shape_.bores - 1, 0, streams() - 1));
}

RowVectorXd Circuit::topmost_down() const {
  return RowVectorXd::Unit(size(), stream(0, 0, 0));
}

RowVectorXd Circuit::mean_fluid() const {
  RowVectorXd sum = RowVectorXd::Zero(size());
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < shape_.layers(); ++k)
      sum.segment(stream(b, k, 0), static_cast<Index>(streams()))
          .setConstant(part_of_layer(k) / static_cast<double>(streams()));
  }
  return sum;
}

RowVectorXd Circuit::near_ground() const {
  RowVectorXd sum = RowVectorXd::Zero(size());
  for (std::size_t w = 0; w < shape_.walls(); ++w)
    sum.segment(term(w, 0), static_cast<Index>(terms())).setConstant(shape_.part_of(w));
  return sum;
}

VectorXd Circuit::stored_heat(const bore::Network& network) const {
  VectorXd heat = VectorXd::Zero(size());
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < shape_.layers(); ++k) {
      for (std::size_t s = 0; s < streams(); ++s) heat(stream(b, k, s)) = part_of_layer(k) * network.capacity.at(s);
      heat(node(b, k, 0, 0)) = part_of_layer(k) * network.modes[0].inner_capacity;
      heat(node(b, k, 0, 1)) = part_of_layer(k) * network.modes[0].outer_capacity;
    }
  }
  return heat;
}

/// Fluid and even mode at the wall's temperature; the other modes know differences only.
VectorXd Circuit::at_rest(const std::vector<double>& ambient) const {
  VectorXd state = VectorXd::Zero(size());
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < shape_.layers(); ++k)
      state.segment(stream(b, k, 0), static_cast<Index>(streams()) + 2).setConstant(ambient[wall_of(b, k)]);
  }
  return state;
}

}  // namespace stillground::screen
