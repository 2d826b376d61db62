#pragma once

#include "tools/present/canvas.hpp"

namespace stillground::present {

/// Room at the right of the plots for the names of all series and levels [px].
double right_margin(const Figure& figure);

/// Names series and levels where they end, at the right of the plot; where a series ends well before, beside its end.
void draw_end_labels(Canvas& canvas, const Panel& panel, const Plot& plot);

}  // namespace stillground::present
