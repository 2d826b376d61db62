#pragma once

#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"

namespace stillground::transit {

/// The least and the greatest EFT of any minute of each run-year: [run-year - 1]. `hours`: all of the run.
///
/// Of each year those hours are marched by minutes (HourMarch) that may hold them: the coldest and warmest, and those
/// restarts and rises of load that may go farther by what hours marched before have shown of their kind. An hour whose
/// like of another year has been marched, at equal hour of the year and nearly equal load, departs from its mean as
/// that one did. No minute's extreme lies inside the hourly means'.
std::vector<record::MinuteExtremes> minute_extremes(const assembly::Assembly& assembly,
                                                    std::span<const record::Hour> hours);

}  // namespace stillground::transit
