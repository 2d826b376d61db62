#pragma once

#include <string>
#include <string_view>

#include "engine/base/unit_system.hpp"

/// Figures as people of one unit system are shown them. We keep figures in a few units ("degC", "m", "W m-1 K-1"); the
/// name of the unit alone decides what is shown instead: a difference is kept in "K", a temperature in "degC".
namespace stillground::units {

/// shown = scale * kept + offset, in `units`.
struct Shown {
  std::string_view units;
  double scale = 1;
  double offset = 0;

  double operator()(double kept) const { return scale * kept + offset; }
};

/// How figures kept in `units` are shown. A unit that both systems share, and one that this table does not know, stays
/// as it is. Factors: NIST SP 811 (2008), appendix B (from memory).
Shown shown_in(std::string_view units, UnitSystem system);

/// A unit as it is printed behind a figure: "W/(m K)" for "W m-1 K-1"; most stand as they are kept.
std::string_view printed_unit(std::string_view units);

/// "120.0 m", "393.7 ft": a figure kept in `units`, with `digits` after the point; "-" if it is not finite.
std::string text(double kept, std::string_view units, int digits, UnitSystem system);

}  // namespace stillground::units
