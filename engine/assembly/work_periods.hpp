#pragma once

#include <vector>

namespace stillground::assembly {

struct Assembly;

/// A stretch of a run in which the same bores work.
struct WorkPeriod {
  long first = 0;         ///< hour of the run at which it begins
  long end = 0;           ///< hour at which the next begins, or the run ends
  int bores = 0;          ///< at work
  double length = 0;      ///< active, of all of them [m]
  double flow = 0;        ///< through the whole field at full flow [m3/s]
  double least_bore = 0;  ///< full flow through the bore that is given least [m3/s]
  double most_bore = 0;   ///< the same, most [m3/s]

  double hours() const { return static_cast<double>(end - first); }
};

/// All of them, in the order of time; one where every bore works from the start to the end. Volumes are those of the
/// fluid at the ground's temperature.
std::vector<WorkPeriod> work_periods(const Assembly& assembly);

}  // namespace stillground::assembly
