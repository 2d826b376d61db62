#pragma once

#include <cstddef>
#include <memory>
#include <span>

#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march {

/// One group's bore within an implicit stage, grout and ground already eliminated layer by layer, so that its streams
/// are left, coupled in each layer, closed at the toe (what came down goes up) and, between two passes, at the top.
/// Eliminated from the toe upwards, it becomes one line,
///   T_out = gain T_in + offset,
/// and once T_in is known everything follows downwards. Exact, O(layers), no iteration.
///
/// A layer's streams leave it at d (down) and u (up), their state, one entry a pass; they exchange at the mean of inlet
/// and outlet, which makes the steady profile second order in the layer's height. With W = m c, F = C_f L/kappa for
/// each stream, P = L A/2 and A = sum over the modes of gives reads^T U, U the modes' conductances with their nodes
/// eliminated:
///   (F + W + P_dd) d + P_du (u + u_in) = F d_rhs + s_d + (W - P_dd) d_in
///   P_ud (d + d_in) + (F + W + P_uu) u = F u_rhs + s_u + (W - P_uu) u_in,   u_in = G d + g from the layer below.
/// With no flow (W = 0) the layers' fluid is stagnant: it exchanges with its own grout at its own temperature.
class BoreElimination {
 public:
  BoreElimination() = default;
  BoreElimination(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
                  double kappa);

  /// Outlet per inlet, 0 < gain < 1 for a flowing fluid; 0 without flow.
  double gain() const { return passes_->gain(); }

  /// Reads the in-bore rows of `rhs`, the eliminated innermost ground row of `y` and the ambient [z]; returns the
  /// offset [K]. `work`: work_size() doubles that `substitute` needs again.
  double eliminate(const double* rhs, const double* y, const double* ambient, std::span<double> work) const {
    return passes_->eliminate(rhs, y, ambient, work);
  }

  /// Writes the in-bore rows and theta_0 for the inlet temperature [K] (ignored without flow), and the heat through the
  /// wall per height of each layer [W/m] into `wall_heat` [z].
  void substitute(double inlet, const double* rhs, double* y, std::span<double> work, double* wall_heat) const {
    passes_->substitute(inlet, rhs, y, work, wall_heat);
  }

  static std::size_t work_size(const StateLayout& layout) { return (4 * layout.passes + 1) * layout.row(); }

  /// One number of passes; called once a group and stage, never per layer.
  struct Passes {
    virtual ~Passes() = default;
    virtual double gain() const = 0;
    virtual double eliminate(const double* rhs, const double* y, const double* ambient,
                             std::span<double> work) const = 0;
    virtual void substitute(double inlet, const double* rhs, double* y, std::span<double> work,
                            double* wall_heat) const = 0;
  };

 private:
  std::unique_ptr<const Passes> passes_;
};

}  // namespace stillground::march
