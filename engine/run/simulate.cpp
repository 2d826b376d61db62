#include <algorithm>
#include <chrono>
#include <set>

#include "engine/record/spool/spool.hpp"
#include "engine/record/write/result_file.hpp"
#include "engine/run/header.hpp"
#include "engine/run/run.hpp"
#include "engine/run/simulation.hpp"
#include "engine/run/warnings.hpp"

namespace stillground::run {

namespace {

using Clock = std::chrono::steady_clock;

constexpr auto between_checkpoints = std::chrono::seconds(30);

/// Hours after which a snapshot is due: the start, then the end of each calendar month or run-year, and the run's end.
std::set<long> snapshot_hours(const model::Scenario& scenario, long hours) {
  std::set<long> due;
  if (scenario.fields == model::RecordFields::none) return due;
  due.insert({0, hours});
  if (scenario.fields == model::RecordFields::yearly) {
    for (long hour = hours_per_year; hour < hours; hour += hours_per_year) due.insert(hour);
    return due;
  }
  Date month{scenario.run.start.year, scenario.run.start.month, 1};
  for (;;) {
    month = month.month == 12 ? Date{month.year + 1, 1, 1} : Date{month.year, month.month + 1, 1};
    const long hour = 24 * days_between(scenario.run.start, month);
    if (hour >= hours) return due;
    due.insert(hour);
  }
}

/// One simulation and the spool it fills.
class Recording {
 public:
  Recording(const Assembly& assembly, const Options& options, const record::Header& header)
      : assembly_(assembly),
        options_(options),
        due_(snapshot_hours(assembly.scenario, assembly.hours())),
        simulation_(assembly, options.threads),
        spool_(options.resume ? record::Spool::resume(options.result, header)
                              : record::Spool::create(options.result, header)) {
    if (spool_.state().empty()) {
      take_snapshot();
    } else {
      simulation_.restore(spool_.state());
    }
  }

  void march() {
    while (!simulation_.finished()) {
      spool_.append(simulation_.march_hour());
      take_snapshot();
      const long hour = simulation_.tally().hour;
      const bool year_ends = hour % hours_per_year == 0;
      if (year_ends) spool_.append(simulation_.year_balance());
      if (year_ends && assembly_.scenario.fields == model::RecordFields::yearly) spool_.append(simulation_.year_mean());
      if (hour % 24 == 0) report(year_ends);
      if (year_ends && !simulation_.finished()) simulation_.start_year();
      if (stopped()) interrupt();
      if (hour % 24 == 0 && Clock::now() - saved_ > between_checkpoints) checkpoint();
    }
  }

  /// The result file from what has been recorded. Returns the warnings that only the march could give.
  std::vector<Warning> finish(const record::Header& header) {
    const auto warnings = warnings_after(assembly_, simulation_.tally());
    record::Closing closing;
    closing.warnings = stored_lines(warnings);
    if (assembly_.scenario.fields != model::RecordFields::none) closing.steady_rise = simulation_.steady_rise();
    record::write_result(options_.result, header, spool_, closing);
    spool_.discard();
    return warnings;
  }

 private:
  void take_snapshot() {
    if (due_.contains(simulation_.tally().hour)) spool_.append(simulation_.snapshot());
  }

  bool stopped() const { return options_.stop && options_.stop->load(); }

  void checkpoint() {
    spool_.checkpoint(simulation_.save());
    saved_ = Clock::now();
  }

  void interrupt() {
    checkpoint();
    throw Interrupted("interrupted at " +
                      iso_hour(assembly_.scenario.run.start, static_cast<double>(simulation_.tally().hour)) +
                      "; a checkpoint is saved, `--resume` goes on from there");
  }

  void report(bool year_ends) const {
    if (!options_.progress) return;
    const Tally& tally = simulation_.tally();
    Progress progress;
    progress.start = assembly_.scenario.run.start;
    progress.hours_done = static_cast<double>(tally.hour);
    progress.hours_total = static_cast<double>(assembly_.hours());
    progress.year_finished = year_ends;
    progress.year = static_cast<int>((tally.hour + hours_per_year - 1) / hours_per_year);
    progress.eft_least = tally.eft_least;
    progress.eft_most = tally.eft_most;
    options_.progress(progress);
  }

  const Assembly& assembly_;
  const Options& options_;
  std::set<long> due_;
  Simulation simulation_;
  record::Spool spool_;
  Clock::time_point saved_ = Clock::now();
};

}  // namespace

std::vector<Warning> simulate(const model::Scenario& scenario, const Options& options) {
  const Assembly assembly = assemble(scenario);
  std::vector<Warning> warnings = warnings_before(assembly);
  const record::Header header = make_header(assembly, warnings);
  Recording recording(assembly, options, header);
  recording.march();
  const auto found = recording.finish(header);
  warnings.insert(warnings.end(), found.begin(), found.end());
  return warnings;
}

}  // namespace stillground::run
