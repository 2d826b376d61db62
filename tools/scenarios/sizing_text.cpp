#include <fmt/format.h>

#include <cmath>

#include "engine/base/paragraph.hpp"
#include "engine/base/temperature.hpp"
#include "engine/units/display.hpp"
#include "tools/scenarios/sizing_words.hpp"

namespace stillground::scenarios {

namespace {

constexpr std::size_t columns = 100;

std::string line(const std::string& what, const std::string& said) {
  return fmt::format("  {:16}{}\n", what, said);
}

/// The differences of EFT [K], "0.08 K".
std::string difference(double kelvin, UnitSystem system, int digits = 2) {
  return units::text(kelvin, "K", digits, system);
}

std::string headline(const Sized& sized, UnitSystem system) {
  const Sizing& sizing = sized.sizing;
  const auto& values = sized.variation.values;
  const std::string range =
      fmt::format("{} to {}", value_text(sized, 0, system), value_text(sized, values.size() - 1, system));
  const char* word = word_of(sized.what);
  switch (sizing.shape) {
    case Shape::crosses:
      return fmt::format("Least {} that keeps all limits for {} years: {}", word, sized.scenario.run.years,
                         value_text(sized, *sizing.answer, system));
    case Shape::all:
      return fmt::format("Every {} of {} keeps all limits for {} years, the least too: {}", word, range,
                         sized.scenario.run.years, value_text(sized, *sizing.answer, system));
    case Shape::none:
      return fmt::format("No {} of {} keeps all limits for {} years", word, range, sized.scenario.run.years);
    case Shape::no_order:
      return fmt::format(
          "There is no least {} of {} to speak of: a smaller one keeps the limits where a greater one breaks them. The "
          "table shows what was found; choose by it, and look closer with --values",
          word, range);
  }
  return "";
}

std::string binding_lines(const Sized& sized, const Look& look, UnitSystem system) {
  const auto binding = binding_of(look, sized.scenario.run.start);
  if (!binding) return "";
  const auto celsius = [&](double kelvin) { return units::text(kelvin - zero_celsius, "degC", 2, system); };
  return line("binding limit",
              fmt::format("{} {}: came to {} in {} of run-year {}, {}", binding->limit, celsius(binding->value),
                          celsius(binding->came_to), binding->month, binding->run_year, binding->hour));
}

std::string gain_line(const Sized& sized, UnitSystem system) {
  const double slope = sized.sizing.slope;
  if (slope == 0) return "";
  if (sized.variation.units.empty()) {
    return line("one bore more", fmt::format("brings about {}", difference(slope, system, 3)));
  }
  const units::Shown shown = units::shown_in("K m-1", system);
  return line(system == UnitSystem::us ? "a foot more" : "a metre more",
              fmt::format("brings about {:.3f} {}", shown(slope), units::printed_unit(shown.units)));
}

std::string screening_line(const Sized& sized, UnitSystem system) {
  const Sizing& sizing = sized.sizing;
  if (!sizing.screens)
    return line("screening", "cannot be made of bores with dates or flows of their own: all were marched");
  const Look* look = sizing.screened_nearest();
  if (sizing.shape == Shape::none || !look || !look->failure.empty()) return "";
  return line("screening",
              fmt::format("saw it at {}; at {} it may be off by {} in an hour, as it estimates itself",
                          value_text(sized, sizing.screened_answer, system), value_text(sized, look->place, system),
                          difference(look->decision.own_error.hour, system)));
}

std::string found_lines(const Sized& sized, UnitSystem system) {
  const Look* look = shown_look(sized);
  if (!look) return "";
  const Sizing& sizing = sized.sizing;
  std::string text;
  const std::string margin = difference(look->decision.margin, system, 3);
  if (sizing.answer) {
    text += line("marched",
                 fmt::format("margin {}; {} to drill", margin, units::text(look->decision.length, "m", 0, system)));
  } else {
    text += line("marched", fmt::format("{} lacks {} still", value_text(sized, look->place, system),
                                        look->failure.empty() ? difference(-look->decision.margin, system, 3)
                                                              : "much: it cannot be"));
  }
  if (sizing.answer && sizing.below) {
    const Look* below = sizing.marched(*sizing.below);
    text += line("next smaller", fmt::format("{}: margin {}", value_text(sized, *sizing.below, system),
                                             difference(below->decision.margin, system, 3)));
  }
  if (!sized.variation.spacings.empty()) {
    text += line("spacing", units::text(sized.variation.spacings[look->place], "m", 2, system));
  }
  return text + binding_lines(sized, *look, system) + gain_line(sized, system) + screening_line(sized, system);
}

}  // namespace

std::string sizing_text(const Sized& sized, UnitSystem system) {
  const Sizing& sizing = sized.sizing;
  std::string text = sized.scenario.title + "\n" + wrapped(headline(sized, system), columns) + "\n\n";
  text += found_lines(sized, system);
  text += line("runs", fmt::format("{} screened, {} marched", sizing.screenings.size(), sizing.marches.size()));
  text += "\n" + present::text(present::in_system(looks_table(sized), system));
  for (const std::string& note : sized.variation.notes) text += "\n" + wrapped(note, columns) + "\n";
  return text;
}

}  // namespace stillground::scenarios
