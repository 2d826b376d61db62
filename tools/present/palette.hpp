#pragma once

#include <array>

#include "tools/present/figure.hpp"

/// Our inks. Each pair that meets in a picture differs in lightness as well as in hue, and in dash or marker, so that a
/// grey print and colour-blind eyes lose nothing.
namespace stillground::present {

inline constexpr const char* ink = "#22272b";        ///< text and axes
inline constexpr const char* quiet_ink = "#5a636a";  ///< second-rank text
inline constexpr const char* grid_ink = "#e3e6e3";   ///< grid lines
inline constexpr const char* deep_pine = "#17494d";  ///< dark: what is now, the last year, the block
inline constexpr const char* clay = "#a85f1f";       ///< middle: what was, the first year, the mid-points
inline constexpr const char* pale_pine = "#a9c6c3";  ///< fill of the last year's range
inline constexpr const char* pale_clay = "#f3dcc0";  ///< fill of the first year's range
inline constexpr const char* pale_wine = "#ecd3d9";  ///< highlight under a fitted trend
inline constexpr const char* limit_ink = "#8d1f3c";  ///< limits
inline constexpr const char* still_ink = "#4a5560";  ///< what does not move: undisturbed, final

inline constexpr const char* setback_tint = "#e6eae7";  ///< land where no bore may stand

inline const Stroke limit_stroke{limit_ink, 2, "12 4 2 4"};

/// Strokes for layouts side by side; they start again after the last one.
inline const std::array<Stroke, 6> layout_strokes{{{deep_pine, 3, ""},
                                                   {clay, 3, "9 5"},
                                                   {"#6d5b98", 3, "2 5"},
                                                   {"#7a8a2a", 3, "14 5 3 5"},
                                                   {"#2f7fb0", 3, "5 3"},
                                                   {"#5b3a29", 3, "18 6"}}};

}  // namespace stillground::present
