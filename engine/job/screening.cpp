#include <algorithm>
#include <limits>
#include <span>

#include "engine/job/checkpoint.hpp"
#include "engine/job/methods.hpp"
#include "engine/job/screened.hpp"
#include "engine/record/write/result_file.hpp"
#include "engine/screen/estimate.hpp"
#include "engine/screen/own_error.hpp"

namespace stillground::job {

namespace {

/// A finished run-year's figures added to the progress.
void add_year(Progress& progress, std::span<const record::Hour> hours) {
  progress.year_finished = true;
  ++progress.year;
  progress.hours_done += static_cast<double>(hours.size());
  progress.eft_least = std::numeric_limits<double>::infinity();
  progress.eft_most = -progress.eft_least;
  for (const record::Hour& hour : hours) {
    if (hour.flow == 0) continue;
    progress.eft_least = std::min(progress.eft_least, hour.eft);
    progress.eft_most = std::max(progress.eft_most, hour.eft);
  }
}

}  // namespace

std::vector<Warning> run_screening(const assembly::Assembly& assembly, const Options& options,
                                   const record::Header& header) {
  const screen::LayoutAnswers answers = screen::layout_answers(assembly);
  const std::atomic<bool>* stop = options.listen ? &options.listen() : nullptr;
  record::ResultFile file(options.result, header, 0);
  std::vector<record::Hour> all_hours;
  Progress progress;
  progress.start = assembly.scenario.run.start;
  progress.hours_total = static_cast<double>(assembly.hours());
  const screen::Estimate estimated = screen::superposed(assembly, answers, [&](std::span<const record::Hour> hours) {
    file.add(hours);
    all_hours.insert(all_hours.end(), hours.begin(), hours.end());
    add_year(progress, hours);
    if (options.progress) options.progress(progress);
    if (stop && stop->load())
      throw Interrupted("interrupted; a screening estimate leaves no checkpoint: run it afresh");
  });
  const Afterwards afterwards = after_screening(assembly, estimated, screen::own_error(assembly, estimated), all_hours);
  file.finish(afterwards.closing);
  if (options.fresh) discard_checkpoint(options, header);
  return afterwards.warnings;
}

}  // namespace stillground::job
