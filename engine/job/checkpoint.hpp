#pragma once

#include "engine/job/run.hpp"
#include "engine/record/frames.hpp"

namespace stillground::job {

/// To be called before any work: throws InputError where a run that neither resumes nor starts `fresh` would leave
/// hours of work that are kept beside its result to no one.
void spare_checkpoint(const Options& options);

/// Deletes what stands beside a result that has been made without it. Throws InputError if another run is writing it.
void discard_checkpoint(const Options& options, const record::Header& header);

}  // namespace stillground::job
