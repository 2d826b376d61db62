#pragma once

#include <array>

#include "tools/present/figure.hpp"

/// Our inks, each for one thing in all pictures. What meets in one picture differs in lightness as well as in hue, and
/// in dash or marker, so that a grey print and colour-blind eyes lose nothing.
namespace stillground::present {

// What every picture has.
inline constexpr const char* ink = "#22272b";        ///< text, axes, and signs that need no colour of their own
inline constexpr const char* quiet_ink = "#5a636a";  ///< second-rank text
inline constexpr const char* grid_ink = "#e3e6e3";   ///< grid lines
inline constexpr const char* limit_ink = "#8d1f3c";  ///< limits, and where they are left

// The fluid: one run-year against another, and all of them.
inline constexpr const char* first_year_ink = "#b5760c";
inline constexpr const char* first_year_fill = "#f6e4bd";
inline constexpr const char* last_year_ink = "#213a6e";
inline constexpr const char* last_year_fill = "#b4c2dd";
inline constexpr const char* every_year_ink = "#3d434a";
inline constexpr const char* every_year_fill = "#eff0f1";

// The ground.
inline constexpr const char* block_ink = "#3c561c";   ///< the ground block
inline constexpr const char* block_fill = "#d9e4bf";  ///< under its fitted trend
inline constexpr const char* middle_ink = "#7b9232";  ///< mid-points between bores
inline constexpr const char* undisturbed_ink = "#6d8096";

// The site from above.
inline constexpr const char* bore_ink = "#17494d";  ///< bores, and the day on which some begin to work
inline constexpr const char* outline_ink = "#4a5560";
inline constexpr const char* setback_fill = "#e6eae7";  ///< where no bore may stand
inline constexpr const char* kept_clear_ink = "#7d6c52";
inline constexpr const char* kept_clear_fill = "#ece6da";

inline const Stroke limit_stroke{limit_ink, 2, "12 4 2 4"};

/// Strokes for equals side by side, such as layouts: from indigo to orchid, dark and light in turn. They start again
/// after the last one.
inline const std::array<Stroke, 6> side_by_side_strokes{{{"#34206e", 3, ""},
                                                         {"#b05cb4", 3, "9 5"},
                                                         {"#6f2c75", 3, "2 5"},
                                                         {"#5a6fd0", 3, "14 5 3 5"},
                                                         {"#4b3a52", 3, "5 3"},
                                                         {"#8d83c9", 3, "18 6"}}};

}  // namespace stillground::present
