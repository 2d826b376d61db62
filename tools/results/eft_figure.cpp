#include <fmt/format.h>

#include <algorithm>

#include "tools/results/eft_panels.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/method_note.hpp"

namespace stillground::results {

namespace {

std::string describe(const Source& source, const FluidSummary& summary, const TemperatureScale& scale) {
  const auto say = [&](const YearFluid& year) {
    if (year.eft.hours == 0) return fmt::format("In run-year {} no hour had flow.", year.run_year);
    return fmt::format("In run-year {} the entering fluid temperature lies between {:.1f} and {}, its mean is {}.",
                       year.run_year, scale(year.eft.least), scale.text(year.eft.most, 1),
                       scale.text(year.eft.mean, 1));
  };
  std::string text = say(summary.years.front());
  if (summary.years.size() > 1) text += " " + say(summary.years.back());
  for (const LimitOutcome& outcome : summary.limits) {
    const std::string first = first_beyond_text(outcome, source.start);
    text += fmt::format(" Limit {} of {}: {}.", outcome.limit.name, scale.plain(outcome.limit.value),
                        outcome.first_beyond ? "first beyond " + first : first);
  }
  return text;
}

bool is_limited(const FluidSummary& summary, Quantity quantity) {
  return std::any_of(summary.limits.begin(), summary.limits.end(),
                     [&](const LimitOutcome& outcome) { return quantity_of(outcome.limit.quantity) == quantity; });
}

}  // namespace

present::Figure eft_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing) {
  const TemperatureScale scale{drawing.units};
  const bool one_year = summary.years.size() == 1;
  present::Figure figure;
  figure.id = "eft";
  figure.footnotes = drawing.footnotes;
  figure.title = "Entering fluid temperature";
  figure.subtitle = {source.title, "Hours with flow only; the shading spans the least and the greatest hourly mean.",
                     first_broken_text(summary.limits, source.start, scale)};
  if (const std::string note = method_note(source.method); !note.empty()) figure.subtitle.push_back(note);
  figure.description = describe(source, summary, scale);
  figure.panels = {month_panel(source, summary, Quantity::eft, scale)};
  if (!one_year) figure.panels.push_back(year_panel(source, summary, Quantity::eft, scale));
  for (const Quantity other : {Quantity::lft, Quantity::mean_fluid}) {
    if (!is_limited(summary, other)) continue;
    figure.panels.push_back(one_year ? month_panel(source, summary, other, scale)
                                     : year_panel(source, summary, other, scale));
  }
  return figure;
}

}  // namespace stillground::results
