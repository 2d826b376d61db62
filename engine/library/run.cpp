#include <stillground/run.hpp>

#include "engine/job/run.hpp"
#include "engine/library/content.hpp"

namespace stillground {

std::vector<Warning> run(const Scenario& scenario, const std::filesystem::path& result, const RunOptions& options) {
  const model::Scenario& read = scenario.content().scenario;
  job::refuse_place(result, read.file, "result");
  // By name, so that a new option that is not handed on does not compile.
  const auto& [threads, resume, fresh, instruction_set, warned, progress, cancel] = options;
  job::Options asked;
  asked.result = result;
  asked.threads = threads;
  asked.resume = resume;
  asked.fresh = fresh;
  asked.instruction_set = instruction_set;
  asked.warned = warned;
  asked.progress = progress;
  if (cancel) asked.listen = [&flag = *cancel]() -> const std::atomic<bool>& { return flag; };
  return job::run(read, asked);
}

}  // namespace stillground
