#pragma once

#include <vector>

namespace stillground::validation {

/// Steady temperatures of a downward and an upward stream in a bore whose wall is at 0 everywhere, in closed form.
///
/// With M = (T_d + T_u)/2 and D = (T_d - T_u)/2 the definitions of R_b and R_a say q' = M/R_b of both and q_a = 2 D/R_a
/// from the one to the other; W = m c. The streams' balances W T_d' = -(q'/2 + q_a) and W T_u' = q'/2 - q_a are
///   d/dz (M, D) = -A (M, D),   A = 1/W ((0, 2/R_a), (1/(2 R_b), 0)),
/// and exp(A x) has cosh(kappa x) on its diagonal, beside it sinh(kappa x)/kappa times A, as A^2 = kappa^2 with kappa =
/// 1/(W sqrt(R_a R_b)). From the toe, where D = 0, every reach is one such matrix. Source: Eskilson & Claesson 1988,
/// Numerical Heat Transfer 13, and Hellstrom 1991 solve the same two balances [from memory]; derived here.
class TwoStreams {
 public:
  struct Reach {
    double length = 0;    ///< [m]
    double bore = 0;      ///< R_b [K m/W]
    double internal = 0;  ///< R_a [K m/W]
  };

  /// `reaches` from the top down; `heat_rate` W [W/K].
  TwoStreams(std::vector<Reach> reaches, double heat_rate);

  struct Pair {
    double down = 0;
    double up = 0;
  };

  /// At `depth` below the bore's top, over the inlet temperature.
  Pair at(double depth) const;

 private:
  Pair over_toe(double depth) const;

  std::vector<Reach> reaches_;
  double heat_rate_;
};

}  // namespace stillground::validation
