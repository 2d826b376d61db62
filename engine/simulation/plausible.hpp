#pragma once

#include <string>

#include "engine/assembly/assembly.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::simulation {

/// Where what can be ends, for march and screening alike; nothing beyond it is a result. Everything that finds a
/// temperature or a balance there throws NumericsError with date, place, value and the likely causes.
///
/// Fluid and bore walls stay above absolute zero and within -60 to 130 degC, or where the fluid's data reach so far
/// within 20 K of them: between these the film and the COP are still held ends of their data, and the run warns. A
/// year's heat balance closes to 1e-6 of the heat turned over: the march's own round-off is below 1e-9.
class Plausible {
 public:
  /// `assembly` must outlive it.
  explicit Plausible(const assembly::Assembly& assembly);

  /// An hour's means at the field's ends [K]. `hour` is the run's, from 0.
  void fluid(double eft, double lft, long hour) const {
    if (!can_be(eft)) stop(hour, "the fluid that enters the heat pumps (EFT)", eft);
    if (!can_be(lft)) stop(hour, "the fluid that leaves the heat pumps", lft);
  }

  /// The mean of the fluid in the loops at an hour's start [K].
  void loops(double mean, long hour) const {
    if (!can_be(mean)) stop(hour, "the fluid in the loops", mean);
  }

  /// The bore walls at the end of hour `hour` - 1.
  void walls(const WallExtremes& found, long hour) const;

  /// A run-year's balance, `year` from 1; `turned_over` [J].
  void balance(const record::YearBalance& balance, double turned_over, int year) const;

  /// What march or heat pumps themselves gave up on in that hour, with the date and the likely causes.
  [[noreturn]] void gave_up(const NumericsError& error, long hour) const;

 private:
  bool can_be(double temperature) const { return temperature > least_ && temperature < most_; }
  [[noreturn]] void stop(long hour, const std::string& what, double temperature) const;

  const assembly::Assembly& assembly_;
  double least_, most_;  // [K]
};

}  // namespace stillground::simulation
