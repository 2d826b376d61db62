#include "engine/base/fixed.hpp"

#include <fmt/format.h>

#include <cmath>

namespace stillground {

std::string fixed(double value, int digits) {
  if (!std::isfinite(value)) return "-";
  std::string s = fmt::format("{:.{}f}", value, digits);
  if (s.front() == '-' && s.find_first_of("123456789") == std::string::npos) s.erase(0, 1);
  return s;
}

}  // namespace stillground
