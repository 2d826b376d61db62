#pragma once

#include <complex>
#include <span>
#include <vector>

#include "engine/ground/grid.hpp"
#include "engine/model/ground.hpp"

namespace stillground::ground {

/// The ground's undisturbed temperature T0(z, t), averaged over the grid's cells.
///
/// A yearly wave of the surface over a geothermal gradient is solved in closed form, layer by layer (periodic heat flow
/// in slabs: Carslaw & Jaeger 1959, 3.7 [section from memory]): no cells of its own, no start-up, no grid error. With
/// A(z) the wave's complex amplitude, F = -k A' and the angular frequency w, heat storage in a cell gives its mean
/// exactly:
///   mean A = (F_top - F_bottom) / (i w rho c dz).
/// A linear warming of the surface (`trend`) is added from a table marched once at set-up on fine cells.
class Undisturbed {
 public:
  /// `start_of_run`: from 1 January 00:00 to the run's start [s]; `duration` [s] bounds the time of later calls.
  Undisturbed(const model::Ground& ground, const Grid& grid, double start_of_run, double duration);

  /// T0 of every cell [z] at `time` [s] since the run's start; K.
  void at(double time, std::span<double> temperature) const;

  /// Mean over the year without the trend, per cell [z]; K.
  const std::vector<double>& yearly_mean() const { return mean_; }

 private:
  std::vector<double> mean_;
  std::vector<std::complex<double>> wave_;  // amplitude of exp(i w t), t since 1 January 00:00; zero without a wave
  double start_of_run_ = 0;
  std::vector<double> warming_;  // [time][z], empty without a trend
  double warming_interval_ = 0;  // [s]
};

/// Complex amplitude at the given depths [m] of a wave exp(i w t) with unit amplitude at the surface, through layered
/// ground. `omega` [1/s]. Source: as above.
std::vector<std::complex<double>> wave_amplitude(const std::vector<model::Layer>& layers, double omega,
                                                 std::span<const double> depths);

}  // namespace stillground::ground
