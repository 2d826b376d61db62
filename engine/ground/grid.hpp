#pragma once

#include <cstddef>
#include <vector>

#include "engine/model/ground.hpp"

namespace stillground::ground {

/// A bore's active part: from `top` to `toe` [m below the surface].
struct DepthInterval {
  double top = 0;
  double toe = 0;
};

/// What decides the cells of the field's one (r, z) grid.
struct GridSpec {
  double bore_radius = 0;   ///< [m]
  double outer_radius = 0;  ///< [m]
  int radial_cells = 36;
  double end_cell = 1;       ///< height of the cells at a bore's ends [m]
  double growth = 1.3;       ///< of heights away from the ends, 1 < growth <= 1.3
  double largest_cell = 8;   ///< along the bores [m]
  double bottom_margin = 0;  ///< from the deepest toe to the grid's bottom [m]
};

/// The same ground cut finer: `radial` times as many rings, cells of 1/`axial` the height everywhere. Factors below 1
/// cut it coarser.
GridSpec refined(GridSpec spec, double radial, double axial);

/// The (r, z) finite-volume grid that every group of the field uses: rings about the bore, layers of the ground.
///
/// Where a ring's node stands decides how fast the rings conduct. With x = ln r, rings h apart and M(s) the integral of
/// exp(s x) theta over x, conduction makes s^2 M(s) of M(s), rings make (2/h sinh(s h/2))^2 M(s). Followed through the
/// moments of a line source that gives off heat, nodes at the rings' geometric means leave theta too low by h^2/9 of
/// q'/(4 pi k) for good, about the bore as well as at its wall; nodes h^2/18 of x farther out do not. What is left dies
/// away behind the front, and field::radial_weights takes it off. (Derived for this grid; verified in
/// validation/infinite_cylinder.)
struct Grid {
  std::vector<double> r_faces;      ///< nr + 1, from the bore wall out [m]; equal ratios
  std::vector<double> r;            ///< nr nodes, of equal ratio too, so that log conductances are exact [m]
  std::vector<double> z_faces;      ///< nz + 1, from 0 down [m]
  std::vector<double> z;            ///< nz centres [m]
  std::vector<model::Solid> solid;  ///< [z]: no cell spans two layers of the log

  std::size_t nr() const { return r.size(); }
  std::size_t nz() const { return z.size(); }
  double height(std::size_t k) const { return z_faces[k + 1] - z_faces[k]; }  ///< [m]
  double ring_area(std::size_t i) const;                                      ///< of ring i [m2]

  /// 2 pi/ln(r_{i+1}/r_i): radial conductance between nodes i and i + 1 per height and unit conductivity.
  double unit_conductance(std::size_t i) const;
};

/// Builds the grid: a face at every layer boundary and at every bore's top and toe (those within 0.25 m share one),
/// cells of `end_cell` at bore ends, growing by `growth` away from them up to `largest_cell` along the bores, without
/// bound below the deepest toe. Rings have equal ratios of radius.
///
/// Where two layers meet along a bore heat bends round the boundary, within as much height as the place is far from the
/// bore and as much as they are unlike: with c = |k1 - k2|/(k1 + k2), or that of the heat capacities if greater, cells
/// there are of 0.4/c of `end_cell`, no less than half of it, and grow by the square of `growth`. The error there
/// is local and short-lived, so growth may be quicker than from an end, whose error reaches every depth. Measured
/// for this grid (validation/steady_ground, validation/layered_bore; other sizes: validation/performance.md).
Grid make_grid(const GridSpec& spec, const std::vector<model::Layer>& layers, const std::vector<DepthInterval>& bores);

/// The part of each cell's height that a bore's active depth interval fills: [z], 0..1. Times the heights it sums to
/// toe - top.
std::vector<double> active_fraction(const Grid& grid, const DepthInterval& bore);

/// Largest eigenvalue [1/s] of axial conduction on the grid (Gershgorin): an explicit step h needs h * this within the
/// scheme's real stability interval.
double stiffest_axial_rate(const Grid& grid);

}  // namespace stillground::ground
