#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <span>

#include "engine/assembly/shown.hpp"
#include "engine/job/checkpoint.hpp"
#include "engine/job/header.hpp"
#include "engine/job/methods.hpp"
#include "engine/job/warnings.hpp"
#include "engine/record/write/result_file.hpp"
#include "engine/screen/estimate.hpp"
#include "engine/screen/own_error.hpp"
#include "engine/transit/minute_extremes.hpp"

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

Warning off_the_march(const model::Scenario& scenario, const record::ScreeningError& error) {
  return {scenario.place("run.method"),
          fmt::format("a screening estimate: a march of the same scenario may differ from it by up to {} in a "
                      "month's mean EFT and {} in an hour's, as it estimates itself",
                      assembly::shown(scenario, error.month, "K", 2), assembly::shown(scenario, error.hour, "K", 2)),
          ""};
}

}  // namespace

std::vector<Warning> run_screening(const assembly::Assembly& assembly, const Options& options,
                                   const record::Header& header) {
  const screen::LayoutResponse response = screen::layout_response(assembly);
  const std::atomic<bool>* stop = options.listen ? &options.listen() : nullptr;
  record::ResultFile file(options.result, header, 0);
  std::vector<record::Hour> all_hours;
  Progress progress;
  progress.start = assembly.scenario.run.start;
  progress.hours_total = static_cast<double>(assembly.hours());
  const screen::Estimate estimated = screen::superposed(assembly, response, [&](std::span<const record::Hour> hours) {
    file.add(hours);
    all_hours.insert(all_hours.end(), hours.begin(), hours.end());
    add_year(progress, hours);
    if (options.progress) options.progress(progress);
    if (stop && stop->load())
      throw Interrupted("interrupted; a screening estimate leaves no checkpoint: run it afresh");
  });
  record::Closing closing;
  closing.screening_error = screen::own_error(assembly, estimated);
  std::vector<Warning> found = warnings_after(assembly, estimated.statistics);
  found.push_back(off_the_march(assembly.scenario, closing.screening_error));
  closing.minutes = transit::minute_extremes(assembly, all_hours);
  closing.warnings = stored_lines(found);
  file.finish(closing);
  if (options.fresh) discard_checkpoint(options, header);
  return found;
}

}  // namespace stillground::job
