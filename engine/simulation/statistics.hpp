#pragma once

#include <cstddef>
#include <limits>
#include <span>
#include <vector>

#include "engine/march/state.hpp"

namespace stillground::simulation {

/// The hour with flow in which the fluid came back coldest, and so was thickest.
struct DesignHour {
  double eft = std::numeric_limits<double>::infinity();  ///< [K]
  long hour = 0;                                         ///< after the run's start
  double reynolds = 0;                                   ///< in the loops that were worst off

  void look_at(const DesignHour& other) {
    if (other.eft < eft) *this = other;
  }
};

/// What a run adds up as it goes on, beside the march's own state. Together they are all that a checkpoint needs.
struct Statistics {
  long hour = 0;  ///< hours marched so far

  // Since the run-year's start.
  double put_in = 0;                                           ///< [J]
  double surface = 0;                                          ///< [J]
  double turned_over = 0;                                      ///< between fluid and bores, either way [J]
  double stored_at_start = 0;                                  ///< stored heat when the run-year began [J]
  double eft_least = std::numeric_limits<double>::infinity();  ///< [K], hours with flow
  double eft_most = -std::numeric_limits<double>::infinity();  ///< [K]
  march::Vector wall_heat;       ///< through each wall, [group][z] of row() entries [J per metre of height]
  std::vector<double> rise_sum;  ///< of the days' ends, [group][z][r] [K]; empty unless yearly means are recorded

  // Since the run's start: what warnings are made of.
  long flowing_hours = 0;
  long laminar_hours = 0;
  long beyond_heating_curve = 0;  ///< hours of heating with EFT outside the COP curve's points
  long beyond_hot_water_curve = 0;
  long beyond_cooling_curve = 0;
  DesignHour design;
  double coldest_fluid = std::numeric_limits<double>::infinity();  ///< [K]
  double warmest_fluid = 0;                                        ///< [K]
  double coldest_wall = std::numeric_limits<double>::infinity();   ///< [K]
  double group_deviation = 0;                                      ///< largest of merged groups [K]

  void start_year(double stored);
};

/// State and statistics as bytes, and back: what a checkpoint holds. `restore` expects vectors of the sizes that a
/// fresh run has and throws InputError if the bytes do not fit them.
std::vector<std::byte> save(const march::State& state, const Statistics& statistics);
void restore(std::span<const std::byte> bytes, march::State& state, Statistics& statistics);

}  // namespace stillground::simulation
