#pragma once

#include <array>

namespace stillground::materials {

/// Long-term strength of a polyethylene under pressure from inside.
struct PipeStrength {
  const char* name = "";     ///< as printed on the pipe
  double stress = 0;         ///< design stress at 20 to 23 degC, water [Pa]
  double full_strength = 0;  ///< to this temperature [K]; warmer pipe is weaker
  const char* source = "";
};

/// What pipes of ground loops are made of.
inline constexpr std::array<PipeStrength, 3> pipe_strengths{{
    {"PE4710", 1000 * 6894.757293168, 300.15,
     "1,000 psi at 73 degF: Plastics Pipe Institute, Sample comparison between PE 4710 and PE 3608, July 2015"},
    {"PE3608", 800 * 6894.757293168, 300.15, "800 psi at 73 degF: the same"},
    {"PE100", 8e6, 293.15, "MRS 10 MPa over 1.25, EN 12201, from memory"},
}};

/// Ratio of outside diameter to wall as pipes are sold and rated by: the next standard one above (7, 7.3, 7.4, 9, 11,
/// 13.5, 13.6, 17, 21, 26) where the wall is thicker than that asks for, within 0.5 %; beyond the table the pipe's own.
/// Lengths in [m], wall > 0.
double dimension_ratio(double outer_diameter, double wall);

/// Long-term pressure that the pipe stands from inside, 2 stress/(ratio - 1) [Pa]; ratio > 1. Sources: ASTM D2837 and
/// F714 (PE4710, PE3608), ISO 161-1 and 4065 (PE100), all from memory.
double pressure_rating(const PipeStrength& strength, double ratio);

}  // namespace stillground::materials
