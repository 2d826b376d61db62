#include "engine/screen/simulate.hpp"

#include <algorithm>
#include <limits>
#include <span>

#include "engine/record/write/result_file.hpp"
#include "engine/run/checkpoint.hpp"
#include "engine/run/chosen_kernels.hpp"
#include "engine/run/header.hpp"
#include "engine/run/warnings.hpp"
#include "engine/screen/estimate.hpp"

namespace stillground::screen {

namespace {

/// A finished run-year's figures added to the progress.
void add_year(run::Progress& progress, std::span<const record::Hour> hours) {
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

std::vector<Warning> simulate(const model::Scenario& scenario, const run::Options& options) {
  run::spare_checkpoint(options);
  const run::Assembly assembly = run::assemble(scenario, run::chosen_kernels(options));
  std::vector<Warning> warnings = run::warnings_before(assembly);
  if (scenario.places.contains("record.fields") && scenario.fields != model::RecordFields::none) {
    warnings.push_back({scenario.place("record.fields"), "a screening estimate has no fields to record", ""});
  }
  if (options.warned) options.warned(warnings);
  const record::Header header = run::make_header(assembly, warnings);
  const FieldResponse response = screened_response(assembly);
  const std::atomic<bool>* stop = options.listen ? &options.listen() : nullptr;
  record::ResultFile file(options.result, header, 0);
  run::Progress progress;
  progress.start = scenario.run.start;
  progress.hours_total = static_cast<double>(assembly.hours());
  const Estimate estimated = superposed(assembly, response, [&](std::span<const record::Hour> hours) {
    file.add(hours);
    add_year(progress, hours);
    if (options.progress) options.progress(progress);
    if (stop && stop->load())
      throw Interrupted("interrupted; a screening estimate leaves no checkpoint: run it afresh");
  });
  const std::vector<Warning> found = run::warnings_after(assembly, estimated.tally);
  record::Closing closing;
  closing.warnings = run::stored_lines(found);
  file.finish(closing);
  if (options.fresh) run::discard_checkpoint(options, header);
  warnings.insert(warnings.end(), found.begin(), found.end());
  return warnings;
}

}  // namespace stillground::screen
