#include "tools/results/eft_panel_parts.hpp"

#include <fmt/format.h>

#include "tools/present/palette.hpp"
#include "tools/results/limit_view.hpp"

namespace stillground::results {

using namespace present;

namespace {

constexpr double room = 0.02;  ///< of the data's span, above and below them

}  // namespace

const Look first_look{{first_year_ink, 2.5, "8 5"}, first_year_fill, 0.9, Marker::hollow};
const Look last_look{{last_year_ink, 3, ""}, last_year_fill, 0.6, Marker::filled};

std::string title_of(Quantity quantity, const std::string& times) {
  switch (quantity) {
    case Quantity::lft:
      return times + ": LFT, the fluid that enters the bores";
    case Quantity::mean_fluid:
      return times + ": mean of EFT and LFT";
    default:
      return times;
  }
}

void add_limits_and_axis(Panel& panel, const FluidSummary& summary, Quantity quantity, const TemperatureScale& scale) {
  Range range;
  for (const Band& band : panel.bands) {
    range.add(band.low);
    range.add(band.high);
  }
  for (const Line& line : panel.lines) {
    for (const Point& point : line.points) range.add(point.y);
  }
  const std::string name =
      fmt::format("{} [{}]{}", name_of(quantity), scale.unit(), range.empty() ? ": no hour had flow" : "");
  panel.levels = limit_levels(summary.limits, quantity, scale, range);
  panel.y = round_axis(name, with_room(range, room), 8);
}

Note crossing_note(Point at, const LimitOutcome& outcome, const Source& source, bool leftward) {
  return {at,   "first beyond " + first_beyond_day(outcome, source.start),      limit_ink,
          true, outcome.limit.is_least ? Note::Side::above : Note::Side::below, leftward};
}

/// The outcomes of the limits on this quantity that were left.
std::vector<LimitOutcome> broken(const FluidSummary& summary, Quantity quantity) {
  std::vector<LimitOutcome> outcomes;
  for (const LimitOutcome& outcome : summary.limits) {
    if (outcome.first_beyond && quantity_of(outcome.limit.quantity) == quantity) outcomes.push_back(outcome);
  }
  return outcomes;
}

}  // namespace stillground::results
