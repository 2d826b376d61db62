#pragma once

#include <vector>

namespace stillground::reference_solutions {

/// A part of a bore that lies in one kind of ground.
struct BorePart {
  double share = 1;          ///< of the bore's length
  double conductivity = 0;   ///< of the ground [W/(m K)]
  double heat_capacity = 0;  ///< of the ground [J/(m3 K)]
  double inner = 0;          ///< fluid to the grout's inner node [K m/W]
  double middle = 0;         ///< inner to outer node [K m/W]
  double outer = 0;          ///< outer node to wall [K m/W]
  double inner_grout = 0;    ///< capacity of the inner node [J/(m K)]
  double outer_grout = 0;    ///< of the outer node [J/(m K)]
};

/// Rise of a fluid of one temperature per W/m of steady heat since t = 0 [K m/W], `time` [s] > 0: in every part fluid -
/// two grout nodes - wall - infinite ground about a cylinder (Carslaw & Jaeger 1959, section 13.5 [section from
/// memory]), the parts side by side. No ends. `fluid`: capacity of both legs [J/(m K)]. Turned back from Laplace's
/// variable by Stehfest's weights (1970, Commun. ACM 13, 47-49 [pages from memory]); within 1e-5.
double fluid_response(const std::vector<BorePart>& parts, double radius, double fluid, double time);

/// What the ends of a bore change in the mean rise of its wall per W/m [K m/W], always below 0: finite less infinite
/// line source. `top` and `length` [m]. Source: Claesson & Javed 2011, ASHRAE Transactions 117(2).
double effect_of_ends(double conductivity, double heat_capacity, double radius, double top, double length, double time);

}  // namespace stillground::reference_solutions
