#pragma once

#include <cstddef>
#include <span>

#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

/// One group's bore within an implicit stage, grout and ground already eliminated layer by layer, so that two streams
/// are left: down and up, coupled in each layer and closed at the toe (u = v). Eliminated from the toe upwards, it
/// answers the loop with
///   v_top = gain T_in + offset,
/// and once T_in is known everything follows downwards. Exact, O(layers), no iteration.
///
/// A layer's streams leave it at u' (down) and v (up), their state; they exchange at the mean of inlet and outlet,
/// which makes the steady profile second order in the layer's height. With W = m c, F = C_f L/kappa, p = L (U_e/8 +
/// U_o/4) and m = L (U_e/8 - U_o/4), U the modes' conductances with the grout eliminated:
///   (F + W + p) u' + m v' + m v       = F u'_rhs + s_d + (W - p) u
///   m u' + (p - W) v' + (F + W + p) v = F v_rhs + s_u - m u.
/// With no flow (W = 0) the layers' fluid stands: it exchanges with its own grout at its own temperature.
class BoreFactors {
 public:
  BoreFactors(const Problem& problem, const Group& group, const FlowRegime& regime, const RadialFactors& radial,
              double kappa);

  /// How the bore answers its inlet, 0 < gain < 1 for a flowing fluid.
  double gain() const { return gain_; }

  /// Reads the in-bore rows of `rhs`, the eliminated innermost ground row of `y` and the ambient [z]; returns the
  /// offset [K]. `work`: work_size() doubles that `substitute` needs again.
  double eliminate(const double* rhs, const double* y, const double* ambient, std::span<double> work) const;

  /// Writes the in-bore rows and theta_0 for the inlet temperature [K] (ignored without flow), and the heat through the
  /// wall per height of each layer [W/m] into `wall_heat` [z].
  void substitute(double inlet, const double* rhs, double* y, std::span<double> work, double* wall_heat) const;

  std::size_t work_size() const { return 5 * row_; }

 private:
  // A mode's two nodes, eliminated: fluid M -> inner node -> outer node -> far end E. With the stage weight kappa over
  // capacity times resistance, in = kappa/(C_i R_i) and so on:
  //   T_o = outer_gain (rhs_o + outward E + back T_i),   T_i = inner_gain (rhs_i + in M + forth outer_gain (rhs_o +
  //   outward E)).
  struct Chain {
    double in = 0, forth = 0, back = 0, outward = 0;
    double inner_gain = 0, outer_gain = 0;
    double conductance = 0;  // fluid to inner node [W/(m K)]

    Chain() = default;
    Chain(const bore::Mode& mode, double beyond, double kappa);  // beyond: outer node to far end [K m/W]

    double inner(double rhs_inner, double from_outer) const;    // T_i for M = 0
    double from_outer(double rhs_outer, double far_end) const;  // T_o for T_i = 0
    // Writes both nodes at the fluid's and the far end's temperature and returns the outer one; rhs may be y.
    double settle(double fluid, double far_end, const double* rhs, double* y, std::size_t at_inner,
                  std::size_t at_outer) const;
    double left() const { return conductance * (1 - inner_gain * in); }  // conductance that the fluid meets
  };

  struct Layer {
    Chain even, odd;
    double inverse_outer = 0;  // 1/(R_outer + wall to first node + fraction * wall response)
    double length = 0;         // of bore in this layer [m]
    double fraction = 0;
    double wall_response = 0;
    double storage = 0;  // F [W/K]
    // Streams.
    double i11 = 0, i12 = 0, i21 = 0, i22 = 0;  // inverse of the 2 x 2 block
    double down_from_inlet = 0;                 // u' per u
    double gain = 0;                            // v per u
    double mixed = 0;                           // m
    double counter = 0;                         // W - p
  };

  bool flows_;
  std::size_t first_, row_;
  double gain_ = 0;
  std::vector<Layer> layers_;  // from the bore's first layer down
};

}  // namespace stillground::march
