#include "tools/present/ramp.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillground::present {

namespace {

using Colour = std::array<double, 3>;  // red, green, blue of sRGB, 0 to 255

constexpr std::array<Colour, 5> anchors = {
    {{33, 42, 68}, {52, 92, 116}, {110, 150, 134}, {202, 194, 142}, {250, 240, 216}}};

}  // namespace

std::string ramp_colour(std::size_t band, std::size_t levels) {
  const double at = levels == 0 ? 0 : static_cast<double>(band) / static_cast<double>(levels) * (anchors.size() - 1);
  const auto below = std::min(static_cast<std::size_t>(at), anchors.size() - 2);
  const double part = at - static_cast<double>(below);
  const auto mixed = [&](std::size_t c) {
    return std::lround(anchors.at(below).at(c) + part * (anchors.at(below + 1).at(c) - anchors.at(below).at(c)));
  };
  return fmt::format("#{:02x}{:02x}{:02x}", mixed(0), mixed(1), mixed(2));
}

}  // namespace stillground::present
