#pragma once

#include <cstddef>
#include <vector>

namespace stillground::reference_solutions {

/// Homogeneous ground, its surface held at zero, and the radius of all bores.
struct SegmentedGround {
  double conductivity = 0;   ///< k [W/(m K)]
  double heat_capacity = 0;  ///< rho c [J/(m3 K)]
  double radius = 0;         ///< [m]
};

struct SegmentedBore {
  double x = 0, y = 0, top = 0, length = 0;  ///< [m]
};

/// A bore's loop for a while: one stream down, an equal one up.
struct SegmentedLoop {
  double heat_rate = 0;  ///< W: mass flow times specific heat [W/K]; 0: it stands and takes no heat
  double local = 0;      ///< R_b [K m/W]
  double internal = 0;   ///< R_a [K m/W]
};

/// Bores that share their inlet, each with a flow of its own that may change, stop and begin.
///
/// Every bore is cut into segments of uniform heat, shorter towards its ends. A segment's wall rises by finite line
/// sources averaged over it (Claesson & Javed 2011, ASHRAE Transactions 117(2); Cimmino & Bernier 2014, Int. J. Heat
/// Mass Transfer 70), superposed in time over steps of constant heat. Along a bore, S the mean of both streams and D
/// half their difference:
///   W dD/dz = -q/2,   W dS/dz = -2 D/R_a,   S - T_wall = q R_b,   S + D = T_in at the top, D = 0 at the toe,
/// solved exactly for heat that is uniform in each segment. Of the bores' contents nothing stores heat.
class SegmentedField {
 public:
  /// `longest`: no time later than this is asked for [s].
  SegmentedField(const SegmentedGround& ground, const std::vector<SegmentedBore>& bores, double longest);

  /// At the end of what was held so far.
  struct State {
    double inlet = 0, outlet = 0;  ///< of the whole field, rises [K]
    std::vector<double> heat;      ///< [bore] into the ground [W]
  };

  /// Holds the field's heat [W] and loops [bore] for `seconds` more; at least one loop flows.
  State hold(double heat, const std::vector<SegmentedLoop>& loops, double seconds);

 private:
  struct Segment {
    std::size_t bore;
    double from, to;  // depth [m]
    double length() const { return to - from; }
  };

  void tabulate(const SegmentedGround& ground, double longest);
  void add_panel(const SegmentedGround& ground, double low, double high, std::size_t order, std::vector<double>& rise);
  std::vector<double> at_knots(double age) const;
  void step(double heat, const std::vector<SegmentedLoop>& loops, double seconds);
  void fluid_rows(const std::vector<SegmentedLoop>& loops, std::vector<double>& matrix) const;
  std::size_t size() const { return segments_.size(); }

  std::vector<SegmentedBore> bores_;
  double radius_;
  std::vector<Segment> segments_;           // bore after bore, downwards
  std::vector<std::vector<double>> table_;  // [knot of ln t][by segment][of segment] [K m/W]
  std::vector<double> times_;               // at the steps' ends, 0 first [s]
  std::vector<std::vector<double>> heats_;  // [step][segment] [W/m]
  double inlet_ = 0;
};

}  // namespace stillground::reference_solutions
