#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/job/run.hpp"
#include "engine/record/frames.hpp"

namespace stillground::job {

/// The two methods by which run() makes a result file of an assembled scenario. Both return the warnings that only the
/// hours could give; `header` holds those known before. Both throw NumericsError, SystemError, Interrupted.

/// Marches hour by hour, with a journal beside the result from which an interrupted run is resumed.
std::vector<Warning> run_march(const assembly::Assembly& assembly, const Options& options,
                               const record::Header& header);

/// Estimates all hours without a march; the file holds them and no fields. Of the options it takes the result's place,
/// the progress, and what stops it, at which it looks at the end of each run-year. Throws InputError, at run.method,
/// where there is no such estimate.
std::vector<Warning> run_screening(const assembly::Assembly& assembly, const Options& options,
                                   const record::Header& header);

}  // namespace stillground::job
