#include "engine/units/udunits.hpp"

#include <udunits2.h>

#include <memory>
#include <mutex>

#include "engine/base/errors.hpp"
#include "engine/units/aliases.hpp"

namespace stillground::units {
namespace {

struct Release {
  void operator()(ut_system* system) const { ut_free_system(system); }
  void operator()(ut_unit* unit) const { ut_free(unit); }
  void operator()(cv_converter* converter) const { cv_free(converter); }
};
using System = std::unique_ptr<ut_system, Release>;
using Unit = std::unique_ptr<ut_unit, Release>;
using Converter = std::unique_ptr<cv_converter, Release>;

// The library parses with global state.
std::mutex library;

ut_system* system_of_units() {
  static const System system = [] {
    ut_set_error_message_handler(ut_ignore);
    System read(ut_read_xml(nullptr));
    if (!read) throw SystemError("UDUNITS-2 cannot read its table of units (package libudunits2-data)");
    return read;
  }();
  return system.get();
}

Unit parsed(const std::string& text) {
  return Unit(ut_parse(system_of_units(), text.c_str(), UT_ASCII));
}

Unit unit_of(const std::string& token) {
  if (const auto scale = find_temperature_scale(token)) return Unit(ut_scale(scale->scale, parsed("K").get()));
  if (const Alias* alias = find_alias(token)) return parsed(std::string(alias->meaning));
  return parsed(token);
}

}  // namespace

bool known_unit(const std::string& token) {
  const std::lock_guard lock(library);
  return unit_of(token) != nullptr;
}

std::optional<double> scale_to_si(const std::vector<Factor>& factors, std::string_view si) {
  const std::lock_guard lock(library);
  Unit product(ut_get_dimensionless_unit_one(system_of_units()));
  for (const Factor& factor : factors) {
    const Unit power(ut_raise(unit_of(factor.token).get(), factor.exponent));
    product = Unit(ut_multiply(product.get(), power.get()));
  }
  const Unit target = parsed(std::string(si));
  if (!product || !ut_are_convertible(product.get(), target.get())) return std::nullopt;
  const Converter converter(ut_get_converter(product.get(), target.get()));
  if (!converter) return std::nullopt;
  return cv_convert_double(converter.get(), 1.0) - cv_convert_double(converter.get(), 0.0);
}

}  // namespace stillground::units
