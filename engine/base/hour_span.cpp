#include "engine/base/hour_span.hpp"

#include <fmt/format.h>

namespace stillground {

std::string hour_span(const Date& start, long hour) {
  const std::string begin = iso_hour(start, static_cast<double>(hour));
  return fmt::format("{}-{:02d}:00", begin, std::stoi(begin.substr(11, 2)) + 1);
}

}  // namespace stillground
