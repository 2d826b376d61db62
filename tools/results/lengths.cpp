#include "tools/results/lengths.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <sstream>

#include "engine/units/quantity.hpp"

namespace stillground::results {

namespace {

std::vector<std::string> parts_of(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::istringstream rest(text);
  for (std::string part; std::getline(rest, part, separator);) parts.push_back(part);
  return parts;
}

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t");
  return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

}  // namespace

double read_length(const std::string& text, const std::string& option) {
  const std::string word = trimmed(text);
  char* end = nullptr;
  const double plain = std::strtod(word.c_str(), &end);
  if (!word.empty() && *end == '\0' && std::isfinite(plain)) return plain;
  const Where where{Place{}, option};
  return units::to_si(word, units::Dimension::length, where);
}

std::vector<PlanPoint> read_places(const std::string& text, const std::string& option) {
  std::vector<PlanPoint> places;
  for (const std::string& pair : parts_of(text, ';')) {
    if (trimmed(pair).empty()) continue;
    const std::vector<std::string> both = parts_of(pair, ',');
    if (both.size() != 2) {
      throw InputError({}, option, fmt::format("\"{}\" is not a place x,y (places are parted by semicolons)", pair));
    }
    places.push_back({read_length(both[0], option), read_length(both[1], option)});
  }
  return places;
}

std::pair<PlanPoint, PlanPoint> read_section(const std::string& text, const std::string& option) {
  const std::vector<std::string> four = parts_of(text, ',');
  if (four.size() != 4) throw InputError({}, option, fmt::format("\"{}\" is not x0,y0,x1,y1", text));
  const auto at = [&](std::size_t i) { return read_length(four[i], option); };
  return {{at(0), at(1)}, {at(2), at(3)}};
}

}  // namespace stillground::results
