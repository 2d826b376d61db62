#pragma once

#include <string>
#include <vector>

#include "tools/results/eft_panels.hpp"

/// What the panels of months and of run-years share.
namespace stillground::results {

/// What tells two run-years apart on paper.
struct Look {
  present::Stroke stroke;
  const char* fill = "";
  double opacity = 1;
  present::Marker marker = present::Marker::none;
};

extern const Look first_look, last_look;

/// The spread of one quantity in a month or a run-year.
template <class Period>
const Spread& part(const Period& period, Quantity quantity) {
  switch (quantity) {
    case Quantity::lft:
      return period.lft;
    case Quantity::mean_fluid:
      return period.mean_fluid;
    default:
      return period.eft;
  }
}

/// The panel's title: which quantity, unless it is the EFT, and at which times.
std::string title_of(Quantity quantity, const std::string& times);

/// Gives the panel the levels of its limits and an axis that holds all its series; the axis says it where there are
/// none.
void add_limits_and_axis(present::Panel& panel, const FluidSummary& summary, Quantity quantity,
                         const TemperatureScale& scale);

/// A ring and the day on which a limit was first left.
present::Note crossing_note(present::Point at, const LimitOutcome& outcome, const Source& source, bool leftward);

/// The outcomes of the limits on this quantity that were left.
std::vector<LimitOutcome> broken(const FluidSummary& summary, Quantity quantity);

}  // namespace stillground::results
