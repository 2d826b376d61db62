#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/units/expression.hpp"

namespace stillground::units {

/// True if UDUNITS-2 or our aliases know the unit. Throws SystemError if the library's table cannot be read.
bool known_unit(const std::string& token);

/// SI units in one of the product of `factors`, none if it is not convertible to `si`. Temperatures in it count as
/// differences. Every token must be known. Safe to call from several threads.
std::optional<double> scale_to_si(const std::vector<Factor>& factors, std::string_view si);

}  // namespace stillground::units
