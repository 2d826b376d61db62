#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"

namespace stillground::response {

/// Small marches of one bore that stand for a whole scenario: what the error estimate learns from.

/// How much finer than a run: times as many rings, layers, steps.
struct Refinement {
  double rings = 1;
  double layers = 1;
  double steps = 1;
};

/// The scenario with its grid given outright, as the assembly's own refined, its step divided likewise and its refresh
/// the assembly's. Nothing else changes.
model::Scenario refined(const assembly::Assembly& assembly, const Refinement& by);

/// One bore of the field's median depth in the same ground, with the field's own grid (refined), one W of constant heat
/// and a flow that never stops; the ground at rest at the field's mean temperature.
model::Scenario lone_bore(const assembly::Assembly& assembly, const Refinement& by);

/// The same in ground of one solid, the mean over the field's bores: no thin layer shortens its steps.
model::Scenario plain_lone_bore(const assembly::Assembly& assembly, const Refinement& by);

/// The same as lone_bore, but with the scenario's own seasons, pumps, curves and flow, and of its loads the bore's
/// share in `hours` hours from midnight of the run's day `day` on (over and over).
model::Scenario lone_bore_on_day(const assembly::Assembly& assembly, const Refinement& by, long day, long hours);

/// One circuit alone in the same ground for `years`, by the field's own grid: the bore of median depth, or the field's
/// first bores in series; with the scenario's own seasons, pumps, curves and flow, and the circuit's share of its first
/// year's loads, over and over.
model::Scenario lone_circuit(const assembly::Assembly& assembly, int years);

/// Hourly means of the EFT's rise per watt [K/W] in the first `hours` hours of a lone bore.
std::vector<double> hourly_rise(const assembly::Assembly& lone, long hours);

/// A lone bore's answer to a watt at late times.
struct LongTimeRise {
  std::vector<double> fluid;                     ///< [time]: rise of the EFT per watt [K/W]
  std::vector<std::vector<double>> at_distance;  ///< [time][distance]: of the ground, mean over the bore's depth [K/W]
};

/// Marches a lone bore with growing steps and reads it at `times` [s] (rising), at the given distances from
/// its axis [m].
LongTimeRise long_time_rise(const assembly::Assembly& lone, const std::vector<double>& times,
                            const std::vector<double>& distances);

}  // namespace stillground::response
