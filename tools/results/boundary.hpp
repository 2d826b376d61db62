#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/present/figure.hpp"
#include "tools/results/ground.hpp"
#include "tools/results/slice_view.hpp"

/// How far a field reaches beyond a line on the plan, such as a neighbour's boundary.
namespace stillground::results {

/// A closed line on the plan.
struct BoundaryLine {
  std::vector<PlanPoint> corners;  ///< [m], at least three
  std::string what;                ///< "the plot's outline"
};

/// The plot of the scenario; where it has none, the bores' hull widened by half their distance.
BoundaryLine boundary_line(const record::Header& header);

/// A change of the ground's temperature, with its place and the instant.
struct BoundaryChange {
  double rise = 0;  ///< [K]
  double time = 0;  ///< since the run's start [s]
  PlanPoint at;
  double depth = 0;  ///< [m]
};

struct Boundary {
  BoundaryLine line;
  std::optional<double> depth;  ///< looked at [m]; none: all of them
  std::vector<BoundaryChange>
      most_warmed;  ///< [run-year - 1]: the greatest change, in whatever direction the sign says
  std::vector<BoundaryChange> most_cooled;  ///< [run-year - 1]: the least
  BoundaryChange highest;                   ///< the largest in size of all
};

/// Looks along the line, a metre from place to place, at every instant that the run kept. Throws InputError without
/// fields.
Boundary boundary_of(const record::read::Result& result, const BoundaryLine& line, std::optional<double> depth);

/// The highest change, where and when, in one sentence.
std::string boundary_verdict(const record::Header& header, const Boundary& boundary, UnitSystem system);

std::string boundary_text(const Source& source, const record::Header& header, const Boundary& boundary,
                          UnitSystem system);
present::Table boundary_table(const record::Header& header, const Boundary& boundary);
present::Json boundary_json(const Source& source, const record::Header& header, const Boundary& boundary);
present::Figure boundary_figure(const Source& source, const record::Header& header, const Boundary& boundary,
                                const outputs::Drawing& drawing);

}  // namespace stillground::results
