#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <span>
#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"

namespace stillground::march {

template <int M>
using Square = Eigen::Matrix<double, M, M>;
template <int M>
using Column = Eigen::Matrix<double, M, 1>;

/// A mode's two nodes within a stage: fluid M -> inner node -> outer node -> far end E, eliminated outwards to inwards:
///   T_o = T_o(M = 0) + outer_from_inner T_i,   T_i = T_i(M = 0) + inner_from_fluid M.
struct Chain {
  // The outer node's parts of its old value, of E, of T_i; the inner node's of its old value, of M, of T_o(T_i = 0).
  double outer_from_old = 0, outer_from_far = 0, outer_from_inner = 0;
  double inner_from_old = 0, inner_from_fluid = 0, inner_from_outer = 0;
  double conductance = 0;  ///< fluid to inner node [W/(m K)]
  bool stores = false;     ///< nodes that do not are no part of the state

  Chain() = default;
  Chain(const bore::Mode& mode, double beyond, double kappa);  ///< `beyond`: outer node to far end [K m/W]

  double outer_alone(double rhs_outer, double far_end) const {
    return outer_from_old * rhs_outer + outer_from_far * far_end;
  }
  double inner_alone(double rhs_inner, double outer) const {
    return inner_from_old * rhs_inner + inner_from_outer * outer;
  }
  /// That the fluid meets, the nodes eliminated: q = U (M - T_i(M = 0)) [W/(m K)].
  double effective_conductance() const { return conductance * (1 - inner_from_fluid); }
};

/// One layer of a bore of M passes within an implicit stage, all but its streams eliminated; streams 0..M-1 go down,
/// M..2M-1 up.
template <int M>
struct BoreLayer {
  static constexpr int streams = 2 * M;

  Chain chain[streams];      ///< [mode]
  Square<streams> reads;     ///< (mode, stream)
  Square<streams> gives;     ///< (mode, stream)
  Square<streams> exchange;  ///< A: heat that leaves a stream per temperature of another [W/(m K)]
  double inverse_outer = 0;  ///< 1/(R_outer + wall to first node + fraction * wall response) [W/(m K)]
  double fraction = 0;
  double wall_response = 0;
  double length = 0;          ///< of bore in this layer [m]
  Column<streams> storage;    ///< F [W/K]
  Square<streams> inverse;    ///< of the streams' block
  Square<M> down_from_inlet;  ///< d per d_in
  Square<M> gain;             ///< u per d_in
  Square<M> mixed;            ///< P_du
  Square<M> counter;          ///< W - P_uu
};

/// The layers of one bore, eliminated from the toe upwards (see BoreElimination for the equations).
template <int M>
class BoreLayers {
 public:
  /// Forms them anew, in the memory they have.
  void make(const Problem& problem, const Group& group, const FlowRegime& regime, const Vector& wall_response,
            double kappa);

  bool flows() const { return flows_; }
  double gain() const { return gain_; }  ///< outlet per inlet; 0 without flow
  std::size_t first() const { return first_; }
  std::size_t size() const { return layers_.size(); }
  const BoreLayer<M>& operator[](std::size_t n) const { return layers_[n]; }  ///< from the bore's first layer down

  /// Inlets of the passes: the first from the field, the second from what the first brought up. `offset`: what the
  /// first brings up by itself at an inlet of 0 [K].
  Column<M> inlets(double inlet, double offset) const;

  /// The outlet at an inlet of 0 [K] from what each pass brings up at inlets of 0.
  double outlet(const Column<M>& up) const;

 private:
  bool flows_ = false;
  std::size_t first_ = 0;
  double gain_ = 0;
  std::vector<BoreLayer<M>> layers_;
};

}  // namespace stillground::march
