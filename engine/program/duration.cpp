#include "engine/program/duration.hpp"

#include <fmt/format.h>

#include <cmath>

namespace stillground::program {

std::string duration_text(double seconds) {
  if (seconds < 1) return "under a second";
  if (seconds < 90) return fmt::format("{:.0f} s", seconds);
  const long minutes = std::lround(seconds / 60);
  if (minutes < 90) return fmt::format("{} min", minutes);
  return fmt::format("{} h {} min", minutes / 60, minutes % 60);
}

}  // namespace stillground::program
