#pragma once

#include <string>

#include "engine/base/calendar.hpp"

namespace stillground {

/// "2027-07-01 13:00-14:00": hour `hour` of a run, from 0, by both its ends (the day's last one "23:00-24:00"). In a
/// result these are the `time_bounds` of the hour's record, the later one its `time`.
std::string hour_span(const Date& start, long hour);

}  // namespace stillground
