#pragma once

#include "engine/loop/closure.hpp"
#include "engine/model/loads.hpp"

namespace stillground::loop {

/// What each hour of a run asks of the ground, from the scenario's loads: files start again after their last year.
class LoadSeries {
 public:
  /// `first_hour_of_year`: hour of the year at which the run starts (a run that starts in July starts in the file's
  /// July).
  LoadSeries(const model::Loads& loads, int first_hour_of_year);

  /// Hour `h` of the run, from 0.
  Demand hour(long h) const;

  /// Largest load of any hour [W]: building heat and cooling together, or the ground's own.
  double peak() const;

  /// Largest cooling through the heat pump in any hour of the file [W].
  double cooling_peak() const;

 private:
  model::Loads loads_;
  int first_hour_of_year_;
};

}  // namespace stillground::loop
