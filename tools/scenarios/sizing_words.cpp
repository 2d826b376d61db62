#include "tools/scenarios/sizing_words.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "engine/base/hour_span.hpp"
#include "engine/units/display.hpp"

namespace stillground::scenarios {

std::optional<Binding> binding_of(const Look& look, const Date& start) {
  static constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  if (!look.failure.empty()) return std::nullopt;
  const results::LimitOutcome* outcome = results::nearest(look.decision.limits);
  if (!outcome || !outcome->closest_at) return std::nullopt;
  const auto hour = static_cast<long>(*outcome->closest_at);
  const std::string span = hour_span(start, hour);
  const Date day = plus_days(start, hour / 24);
  return Binding{.limit = outcome->limit.name,
                 .value = outcome->limit.value,
                 .came_to = outcome->closest,
                 .hour = outcome->by_month ? span.substr(0, 7) : span,
                 .month = months.at(static_cast<std::size_t>(day.month - 1)),
                 .run_year = static_cast<int>(hour / hours_per_year) + 1};
}

std::string value_units(const Variation& variation) {
  return variation.units.empty() ? "bores" : variation.units;
}

const char* word_of(Varied what) {
  return what == Varied::depth ? "depth" : what == Varied::spacing ? "spacing" : "count";
}

const char* shape_word(Shape shape) {
  switch (shape) {
    case Shape::crosses:
      return "a least value";
    case Shape::none:
      return "none keeps the limits";
    case Shape::all:
      return "all keep the limits";
    case Shape::no_order:
      return "no order";
  }
  return "";
}

const Look* shown_look(const Sized& sized) {
  const Sizing& sizing = sized.sizing;
  if (sizing.answer) return sizing.marched(*sizing.answer);
  return sizing.shape == Shape::none && !sizing.marches.empty() ? &sizing.marches.back() : nullptr;
}

std::string value_text(const Sized& sized, std::size_t place, UnitSystem system) {
  const double value = sized.variation.values[place];
  if (sized.variation.units.empty()) return fmt::format("{:.0f} {}", value, value == 1 ? "bore" : "bores");
  return units::text(value, sized.variation.units, system == UnitSystem::us ? 1 : 2, system);
}

}  // namespace stillground::scenarios
