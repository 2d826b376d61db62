#include "tools/results/temperature_scale.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/units/display.hpp"
#include "tools/present/table.hpp"
#include "tools/results/celsius.hpp"

namespace stillground::results {

double TemperatureScale::operator()(double kelvin) const {
  return units::shown_in("degC", units)(celsius(kelvin));
}

std::string TemperatureScale::unit() const {
  return with_degree_signs(std::string(units::shown_in("degC", units).units));
}

std::string TemperatureScale::plain(double kelvin) const {
  const double figure = std::round(1e6 * (*this)(kelvin)) / 1e6;  // without the round-off of going to kelvin and back
  return fmt::format("{:.4g} {}", figure == 0 ? 0 : figure, unit());
}

std::string TemperatureScale::text(double kelvin, int digits) const {
  return present::fixed((*this)(kelvin), digits) + " " + unit();
}

std::string TemperatureScale::difference(double kelvin, int digits, bool with_sign) const {
  const std::string figure = with_degree_signs(units::text(kelvin, "K", digits, units));
  const bool negative = figure.front() == '-';
  return with_sign && !negative ? "+" + figure : figure;
}

std::string with_degree_signs(std::string sentence) {
  for (std::size_t at = sentence.find("deg"); at != std::string::npos; at = sentence.find("deg", at + 1)) {
    const bool scale = at + 3 < sentence.size() && (sentence[at + 3] == 'C' || sentence[at + 3] == 'F');
    if (scale) sentence.replace(at, 3, "°");
  }
  return sentence;
}

}  // namespace stillground::results
