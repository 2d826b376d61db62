#pragma once

#include "tools/sweep/point.hpp"

namespace stillground::sweep {

/// Says on standard error, before the start, how many points there are and what their results may take on the disk.
/// Throws SystemError where those that are certainly kept would not fit.
void announce(const Points& points);

}  // namespace stillground::sweep
