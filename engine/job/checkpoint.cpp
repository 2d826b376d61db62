#include "engine/job/checkpoint.hpp"

#include "engine/record/journal/journal.hpp"

namespace stillground::job {

void spare_checkpoint(const Options& options) {
  if (options.resume || options.fresh) return;
  const auto saved = record::Journal::look(options.result);
  if (!saved || !saved->checkpoint) return;
  throw InputError(
      {options.result.string() + ".spool"}, "",
      "keeps the checkpoint of an interrupted run: go on from it with --resume, discard it with --fresh, or "
      "write this result elsewhere with -o");
}

void discard_checkpoint(const Options& options, const record::Header& header) {
  record::Journal::create(options.result, header).discard();
}

}  // namespace stillground::job
