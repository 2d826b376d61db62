#pragma once

#include <cstddef>
#include <vector>

#include "engine/screen/circuit.hpp"
#include "engine/screen/stage_solver.hpp"

namespace stillground::screen {

/// What an hour makes of columns of a circuit's state and of what drives it, by the march's own steps and stage weights
/// (march::ars222): a screening estimate and its march err alike by the time step. Columns: those of the state that
/// were given, then each wall's ambient (1 K), then all walls' change within the hour (straight, to 1 K at its end),
/// then the load (1 W).
struct HourOfColumns {
  RowMatrix after;            ///< state at the hour's end
  Eigen::RowVectorXd outlet;  ///< mean over the hour of the stream that leaves
  Eigen::RowVectorXd down;    ///< the same of the topmost cell of that which enters
};

/// `start`: [size][column], without heat; `step` [s] divides an hour.
HourOfColumns over_an_hour(const Circuit& circuit, const Rates& rates, double step, const Eigen::MatrixXd& start);

/// The same on the amplitudes of a few modes of the state, ready for the march through the hours: column after column.
class HourlyPropagator {
 public:
  /// What is driven, columns: the modes' amplitudes, then as HourOfColumns. What follows, rows: the amplitudes after
  /// the hour, then outlet and down as there, then the heat through the mean metre of each wall [J/m].
  struct Places {
    std::size_t modes = 0, walls = 0;

    std::size_t ambient(std::size_t wall) const { return modes + wall; }
    std::size_t change() const { return modes + walls; }
    std::size_t load() const { return modes + walls + 1; }
    std::size_t columns() const { return modes + walls + 2; }
    std::size_t outlet() const { return modes; }
    std::size_t down() const { return modes + 1; }
    std::size_t heat(std::size_t wall) const { return modes + 2 + wall; }
    std::size_t rows() const { return modes + 2 + walls; }
  };

  HourlyPropagator() = default;

  /// `modes`: orthonormal columns [size][mode] without heat; `hour`: of these as its start.
  HourlyPropagator(const Circuit& circuit, const HourOfColumns& hour, const Eigen::MatrixXd& modes);

  /// Adds `part` times what follows from `driven` [columns]; `result` has rows() entries, filled up to whole packs.
  void add(double part, const double* driven, std::vector<Pack>& result) const;

  /// Adds `times` one column.
  void add_column(std::size_t column, double times, std::vector<Pack>& result) const;

  double at(std::size_t row, std::size_t column) const { return entries_.row(column)[row]; }

  /// a + part (b - a).
  static HourlyPropagator between(const HourlyPropagator& a, const HourlyPropagator& b, double part);

 private:
  PackedRows entries_;  // [column][row]
};

}  // namespace stillground::screen
