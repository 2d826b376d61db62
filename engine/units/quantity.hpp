#pragma once

#include <string_view>

#include "engine/base/where.hpp"
#include "engine/units/dimension.hpp"

namespace stillground::units {

/// SI = scale * value + offset; the offset is zero save for temperatures.
struct Conversion {
  double scale = 1;
  double offset = 0;
  double operator()(double value) const { return scale * value + offset; }
};

/// How values in a unit become SI: `kW`, `degF`, `Btu/(h ft degF)`. `examples` are quoted in errors, the dimension's
/// own if empty. A fraction may go without. InputError at `where` if the unit is unknown, has two meanings, or is of
/// another dimension.
Conversion conversion(std::string_view unit, Dimension dimension, const Where& where, std::string_view examples = {});

/// The SI value of a quantity with its unit, "120 m" or "54 degF". Finite; temperatures not below absolute zero. A
/// fraction may stand alone ("0.2"), every other dimension needs its unit. InputError at `where` otherwise.
double to_si(std::string_view text, Dimension dimension, const Where& where, std::string_view examples = {});

}  // namespace stillground::units
