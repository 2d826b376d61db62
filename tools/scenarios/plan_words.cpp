#include "tools/scenarios/plan_words.hpp"

#include <fmt/format.h>

#include "engine/base/calendar.hpp"
#include "engine/units/display.hpp"

namespace stillground::scenarios {

std::string date_of(const model::Run& run, double seconds) {
  const std::string text = iso_hour(run.start, seconds / seconds_per_hour);
  return text.ends_with(" 00:00") ? text.substr(0, text.find(' ')) : text;
}

std::string count_text(std::size_t bores) {
  return fmt::format("{} bore{}", bores, bores == 1 ? "" : "s");
}

std::string sums_sentence(const PlanSums& sums, UnitSystem system) {
  const auto say = [system](double kept, const char* kind, int digits) {
    return units::text(kept, kind, digits, system);
  };
  std::string text = count_text(sums.bores);
  if (sums.bores > 1) text += fmt::format(", {} apart at the nearest", say(sums.nearest, "m", 2));
  text += fmt::format(", {} active, {} to drill", say(sums.active_length, "m", 0), say(sums.drill_length, "m", 0));
  if (sums.land > 0) text += fmt::format(", on {} of land", say(sums.land, "m2", 0));
  return text;
}

}  // namespace stillground::scenarios
