#include <limits>

#include "engine/record/write/contents.hpp"

namespace stillground::record {

void put_minutes(ResultWriter& writer, const std::vector<MinuteExtremes>& years) {
  if (years.empty()) return;
  const auto put = [&](const schema::Variable& variable, auto get) {
    std::vector<double> values;
    for (const MinuteExtremes& year : years) values.push_back(get(year));
    writer.put(variable, values);
  };
  const auto end_of = [](long hour) {
    return hour < 0 ? std::numeric_limits<double>::quiet_NaN() : static_cast<double>(hour + 1);
  };
  put(schema::eft_minute_min, [](const MinuteExtremes& year) { return year.eft_least; });
  put(schema::eft_minute_max, [](const MinuteExtremes& year) { return year.eft_most; });
  put(schema::eft_minute_min_time, [&](const MinuteExtremes& year) { return end_of(year.hour_least); });
  put(schema::eft_minute_max_time, [&](const MinuteExtremes& year) { return end_of(year.hour_most); });
}

}  // namespace stillground::record
