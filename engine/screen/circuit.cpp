#include "engine/screen/circuit.hpp"

#include <utility>

#include "engine/base/calendar.hpp"

namespace stillground::screen {

using Eigen::MatrixXd;
using Eigen::RowVectorXd;
using Eigen::VectorXd;

Circuit::Circuit(CircuitShape shape, NearGround ground) : shape_(std::move(shape)), ground_(std::move(ground)) {}

Circuit::Index Circuit::stream(std::size_t bore, std::size_t layer, std::size_t s) const {
  return static_cast<Index>((bore * layers() + layer) * 3 * streams() + s);
}

Circuit::Index Circuit::node(std::size_t bore, std::size_t layer, std::size_t mode, std::size_t which) const {
  return stream(bore, layer, streams() + 2 * mode + which);
}

RowVectorXd Circuit::of(Index place) const {
  return RowVectorXd::Unit(size(), place);
}

RowVectorXd Circuit::near_ground() const {
  RowVectorXd sum = RowVectorXd::Zero(size());
  sum.segment(first_term(), heat() - first_term()).setOnes();
  return sum;
}

/// Of the wall but for what the layer's own heat does at once.
RowVectorXd Circuit::wall(std::size_t layer) const {
  return of(ambient()) + shape_.profile[layer] * of(profile()) + near_ground() + ground_.drift * of(heat());
}

/// What flows into a layer.
RowVectorXd Circuit::inlet(std::size_t bore, std::size_t layer, std::size_t s, double heat_rate) const {
  const std::size_t passes = shape_.passes, last = layers() - 1;
  if (s >= passes) return of(layer == last ? stream(bore, last, s - passes) : stream(bore, layer + 1, s));
  if (layer > 0) return of(stream(bore, layer - 1, s));
  if (s > 0) return of(stream(bore, 0, passes + s - 1));
  if (bore > 0) return of(stream(bore - 1, 0, 2 * passes - 1));
  return outlet() + of(load()) / heat_rate;
}

MatrixXd Circuit::rates(const bore::Network& network, double heat_rate) const {
  MatrixXd rates = MatrixXd::Zero(size(), size());
  const double share = 1 / static_cast<double>(shape_.bores * layers());
  RowVectorXd mean_heat = RowVectorXd::Zero(size());
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < layers(); ++k) {
      std::vector<RowVectorXd> into, exchanging;
      for (std::size_t s = 0; s < streams(); ++s) {
        const RowVectorXd own = of(stream(b, k, s));
        into.push_back(heat_rate > 0 ? inlet(b, k, s, heat_rate) : own);
        exchanging.push_back((own + into.back()) / 2);
      }
      for (std::size_t s = 0; s < streams(); ++s) {
        const Index row = stream(b, k, s);
        rates.row(row) += heat_rate / (shape_.layer_height * network.capacity.at(s)) * (into[s] - of(row));
      }
      for (std::size_t m = 0; m < streams(); ++m) {
        const bore::Mode& mode = network.modes.at(m);
        const Index inner = node(b, k, m, 0), outer = node(b, k, m, 1);
        const bool stores = mode.inner_capacity > 0;
        RowVectorXd drop = stores ? RowVectorXd(-of(inner)) : RowVectorXd(RowVectorXd::Zero(size()));
        for (std::size_t s = 0; s < streams(); ++s) drop += mode.reads.at(s) * exchanging[s];
        const RowVectorXd flux = drop / (stores ? mode.inner : mode.resistance());
        for (std::size_t s = 0; s < streams(); ++s) {
          rates.row(stream(b, k, s)) -= mode.gives.at(s) / network.capacity.at(s) * flux;
        }
        if (!stores) continue;
        const RowVectorXd between = (of(inner) - of(outer)) / mode.middle;
        const RowVectorXd out = m == 0 ? RowVectorXd((of(outer) - wall(k)) / (mode.outer + ground_.instant))
                                       : RowVectorXd(of(outer) / mode.outer);
        rates.row(inner) += (flux - between) / mode.inner_capacity;
        rates.row(outer) += (between - out) / mode.outer_capacity;
        if (m == 0) mean_heat += share * out;
      }
    }
  }
  for (std::size_t j = 0; j < ground_.terms.size(); ++j) {
    const Index place = first_term() + static_cast<Index>(j);
    const response::Exponential& term = ground_.terms[j];
    rates.row(place) = (term.amplitude * mean_heat - of(place)) / term.time_constant;
  }
  rates.row(heat()) = mean_heat;
  rates.row(ambient()) = of(change()) / seconds_per_hour;
  return rates;
}

RowVectorXd Circuit::outlet() const {
  return of(stream(shape_.bores - 1, 0, streams() - 1));
}

RowVectorXd Circuit::topmost_down() const {
  return of(stream(0, 0, 0));
}

RowVectorXd Circuit::mean_fluid() const {
  RowVectorXd sum = RowVectorXd::Zero(size());
  const double share = 1 / static_cast<double>(shape_.bores * layers() * streams());
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < layers(); ++k)
      sum.segment(stream(b, k, 0), static_cast<Index>(streams())).setConstant(share);
  }
  return sum;
}

/// Fluid and even mode at a layer's temperature; the other modes know differences only.
VectorXd Circuit::filled(const std::vector<double>& per_layer) const {
  VectorXd state = VectorXd::Zero(size());
  for (std::size_t b = 0; b < shape_.bores; ++b) {
    for (std::size_t k = 0; k < layers(); ++k) {
      state.segment(stream(b, k, 0), static_cast<Index>(streams()) + 2).setConstant(per_layer[k]);
    }
  }
  return state;
}

VectorXd Circuit::at_rest() const {
  VectorXd state = filled(std::vector<double>(layers(), 1.0));
  state(ambient()) = 1;
  return state;
}

VectorXd Circuit::profile_at_rest() const {
  VectorXd state = filled(shape_.profile);
  state(profile()) = 1;
  return state;
}

}  // namespace stillground::screen
