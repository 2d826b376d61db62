#pragma once

#include <functional>
#include <vector>

#include "engine/record/frames.hpp"

namespace stillground::testing {

/// Hours whose EFT [degC] is a function of the hour since the start; the LFT stands 2 K above it, and all have flow.
inline std::vector<record::Hour> made_hours(std::size_t count, const std::function<double(std::size_t)>& eft) {
  std::vector<record::Hour> hours(count);
  for (std::size_t h = 0; h < count; ++h) {
    hours[h].eft = 273.15 + eft(h);
    hours[h].lft = hours[h].eft + 2;
    hours[h].flow = 1;
  }
  return hours;
}

}  // namespace stillground::testing
