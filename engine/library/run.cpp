#include <stillground/run.hpp>

#include "engine/job/run.hpp"
#include "engine/library/content.hpp"

namespace stillground {

std::vector<Warning> run(const Scenario& scenario, const std::filesystem::path& result, const RunOptions& options) {
  const model::Scenario& read = scenario.content().scenario;
  job::refuse_place(result, read.file, "result");
  job::Options asked;
  asked.result = result;
  asked.threads = options.threads;
  asked.resume = options.resume;
  asked.fresh = options.fresh;
  asked.instruction_set = options.instruction_set;
  asked.warned = options.warned;
  asked.progress = options.progress;
  if (options.cancel) asked.listen = [&options]() -> const std::atomic<bool>& { return *options.cancel; };
  return job::run(read, asked);
}

}  // namespace stillground
