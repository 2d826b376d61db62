#include "tools/results/minutes.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/base/hour_span.hpp"
#include "tools/results/celsius.hpp"

namespace stillground::results {

namespace {

std::string about(const Minute& minute, const std::string& end, const Date& start, UnitSystem units) {
  return fmt::format("about {:.1f} {} at the {} ({})", TemperatureScale{units}(minute.eft),
                     units == UnitSystem::si ? "degC" : "degF", end, hour_span(start, minute.hour));
}

}  // namespace

std::optional<Minute> farthest_minute(std::span<const record::MinuteExtremes> years, bool least) {
  std::optional<Minute> farthest;
  for (const record::MinuteExtremes& year : years) {
    const Minute now = least ? Minute{year.eft_least, year.hour_least} : Minute{year.eft_most, year.hour_most};
    if (now.hour < 0 || std::isnan(now.eft)) continue;
    if (!farthest || (least ? now.eft < farthest->eft : now.eft > farthest->eft)) farthest = now;
  }
  return farthest;
}

std::string minute_text(std::span<const record::MinuteExtremes> years, const Date& start, UnitSystem units) {
  const auto least = farthest_minute(years, true), most = farthest_minute(years, false);
  if (!least || !most) return "What minutes within the hours bring was not estimated.\n";
  return fmt::format("In any minute: EFT {},\n                   {}.\n", about(*least, "least", start, units),
                     about(*most, "greatest", start, units));
}

present::Json minute_json(std::span<const record::MinuteExtremes> years, const Date& start) {
  const auto one = [&](bool least) {
    const auto minute = farthest_minute(years, least);
    if (!minute) return present::Json(nullptr);
    present::Json json = present::quantity(celsius(minute->eft), "degC");
    json["date"] = iso_hour(start, static_cast<double>(minute->hour + 1));
    return json;
  };
  return {{"eft_min", one(true)}, {"eft_max", one(false)}};
}

}  // namespace stillground::results
