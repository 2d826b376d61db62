#include <chrono>
#include <thread>

#include "engine/config/read.hpp"
#include "engine/job/run.hpp"
#include "engine/record/journal/journal.hpp"
#include "engine/record/journal/log_file.hpp"
#include "tools/points/decide.hpp"
#include "tools/sweep/failure.hpp"
#include "tools/sweep/point.hpp"

namespace stillground::sweep {

namespace {

/// Whether a checkpoint waits beside the result. Throws BeingWritten.
bool has_checkpoint(const std::filesystem::path& result) {
  try {
    const auto saved = record::Journal::look(result);
    return saved && saved->checkpoint;
  } catch (const record::BeingWritten&) {
    throw;
  } catch (const InputError&) {
    return false;  // of another version
  }
}

/// Goes on from a checkpoint if it is one of this run's.
results::Decision marched(const model::Scenario& scenario, job::Options options) {
  if (has_checkpoint(options.result)) {
    options.resume = true;
    try {
      return points::march(scenario, options);
    } catch (const record::BeingWritten&) {
      throw;
    } catch (const InputError&) {
      options.resume = false;
    }
  }
  options.fresh = true;
  return points::march(scenario, options);
}

}  // namespace

Record Points::march_once(std::size_t number, const std::string& digest, const March& how) const {
  model::Scenario own = scenario(number);
  if (own.run.screens()) {  // whoever runs the result's own scenario gets this result
    auto overrides = walk_.overrides(walk_.choice(number));
    overrides.push_back(config::plain_override("run.method", "march", {plan_.file.string()}));
    own = config::read_scenario(plan_.scenario, std::nullopt, {}, overrides);
  }
  job::Options options;
  options.result = folder_.result(digest);
  // Under its final name a result is whole, and its name says that it is this point's.
  if (std::filesystem::exists(options.result)) {
    return record_of(results::decision_of(record::read::Result(options.result)), own);
  }
  options.threads = how.threads;
  options.listen = how.listen;
  options.progress = [&](const job::Progress& progress) {
    if (how.progress) how.progress(progress.hours_done / progress.hours_total);
  };
  return record_of(marched(own, options), own);
}

void Points::march(std::size_t number, const March& how) const {
  const Identity point = look(number);
  if (!point.failed.empty()) return;
  const std::atomic<bool>* stop = how.listen ? &how.listen() : nullptr;
  while (!folder_.read(point.digests.march)) {
    std::optional<Record> record;
    const auto attempt = [&] {
      try {
        record = march_once(number, point.digests.march, how);
      } catch (const record::BeingWritten&) {
        return Record{};  // by another process
      } catch (const Interrupted&) {
        throw Interrupted("interrupted; a checkpoint is saved, the same command goes on from there");
      }
      return *record;
    };
    const Record made = fenced("march", attempt);
    if (record || !made.failed.empty()) {
      folder_.write(point.digests.march, made);
    } else {
      if (stop != nullptr && stop->load()) throw Interrupted("interrupted");
      std::this_thread::sleep_for(std::chrono::milliseconds(200));
    }
  }
}

}  // namespace stillground::sweep
