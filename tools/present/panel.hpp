#pragma once

#include "tools/present/canvas.hpp"

namespace stillground::present {

inline constexpr double label_size = 17;   ///< of all words in a panel [px]
inline constexpr double text_margin = 20;  ///< between the picture's edges and its words [px]

/// Height of a panel with its title, axes and their names [px].
double panel_height(const Panel& panel);

/// Draws it from `top` on, `right` px being left free for the names at its right, in a picture `width` px wide.
void draw_panel(Canvas& canvas, const Panel& panel, double top, double width, double right);

}  // namespace stillground::present
