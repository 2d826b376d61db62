#include <algorithm>
#include <chrono>
#include <set>
#include <utility>

#include "engine/forecast/merging.hpp"
#include "engine/job/header.hpp"
#include "engine/job/methods.hpp"
#include "engine/job/warnings.hpp"
#include "engine/record/journal/journal.hpp"
#include "engine/record/write/result_file.hpp"
#include "engine/simulation/believed.hpp"
#include "engine/transit/minute_extremes.hpp"

namespace stillground::job {

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

/// Hours after which merged groups are confirmed.
std::vector<long> deviation_hours(const assembly::Assembly& assembly) {
  return assembly.merges() ? forecast::merging_hours(assembly.scenario.run.years) : std::vector<long>{};
}

/// One simulation, the journal it fills and the result file that grows beside it.
class Recording {
 public:
  Recording(const assembly::Assembly& assembly, const Options& options, const record::Header& header)
      : assembly_(assembly),
        options_(options),
        stop_(options.listen ? &options.listen() : nullptr),
        due_(snapshot_hours(assembly.scenario, assembly.hours())),
        simulation_(assembly, options.threads, deviation_hours(assembly)),
        plausible_(assembly),
        journal_(options.resume ? record::Journal::resume(options.result, header)
                                : record::Journal::create(options.result, header)),
        file_(options.result, header, due_.size()) {
    if (journal_.state().empty()) {
      take_snapshot();
    } else {
      journal_.replay([&](record::Frame frame) {
        if (const auto* hours = std::get_if<std::vector<record::Hour>>(&frame)) keep(*hours);
        std::visit([&](auto& kept) { file_.add(std::move(kept)); }, frame);
      });
      simulation_.restore(journal_.state());
    }
  }

  /// What ends in the impossible would do so again: no checkpoint of it stays in the next run's way.
  void march() {
    try {
      march_hours();
    } catch (const NumericsError&) {
      journal_.discard();
      throw;
    }
  }

  /// The result file from what has been recorded. Returns the warnings that only the march could give.
  std::vector<Warning> finish() {
    const auto warnings = warnings_after(assembly_, simulation_.statistics());
    record::Closing closing;
    closing.minutes = transit::minute_extremes(assembly_, all_hours_);
    closing.warnings = stored_lines(warnings);
    closing.group_deviation = simulation_.statistics().group_deviation;
    if (assembly_.scenario.fields != model::RecordFields::none) closing.steady_rise = simulation_.steady_rise();
    file_.finish(closing);
    journal_.discard();
    return warnings;
  }

 private:
  void march_hours() {
    while (!simulation_.finished()) {
      hours_.push_back(simulation::believed_hour(simulation_, plausible_));
      const long hour = simulation_.statistics().hour;
      const bool day_ends = hour % 24 == 0, year_ends = hour % hours_per_year == 0;
      if (day_ends) plausible_.walls(simulation_.walls(), hour);
      if (day_ends) record_hours();  // snapshots and years end with a day
      take_snapshot();
      if (year_ends) end_year(hour / hours_per_year);
      if (year_ends && assembly_.scenario.fields == model::RecordFields::yearly) record(simulation_.year_mean());
      if (day_ends) report(year_ends);
      if (year_ends && !simulation_.finished()) simulation_.start_year();
      if (stopped()) interrupt();
      if (day_ends && Clock::now() - saved_ > between_checkpoints) checkpoint();
    }
  }

  void end_year(long year) {
    const record::YearBalance balance = simulation_.year_balance();
    plausible_.balance(balance, simulation_.statistics().turned_over, static_cast<int>(year));
    record(balance);
  }

  void take_snapshot() {
    if (due_.contains(simulation_.statistics().hour)) record(simulation_.snapshot());
  }

  template <class Kind>
  void record(Kind frame) {
    journal_.append(frame);
    file_.add(std::move(frame));
  }

  void record_hours() {
    journal_.append(hours_);
    file_.add(hours_);
    keep(hours_);
    hours_.clear();
  }

  void keep(const std::vector<record::Hour>& hours) { all_hours_.insert(all_hours_.end(), hours.begin(), hours.end()); }

  bool stopped() const { return stop_ && stop_->load(); }

  void checkpoint() {
    if (!hours_.empty()) record_hours();
    journal_.checkpoint(simulation_.save());
    saved_ = Clock::now();
  }

  void interrupt() {
    checkpoint();
    throw Interrupted("interrupted at " +
                      iso_hour(assembly_.scenario.run.start, static_cast<double>(simulation_.statistics().hour)) +
                      "; a checkpoint is saved, `--resume` goes on from there");
  }

  void report(bool year_ends) const {
    if (!options_.progress) return;
    const simulation::Statistics& statistics = simulation_.statistics();
    Progress progress;
    progress.start = assembly_.scenario.run.start;
    progress.hours_done = static_cast<double>(statistics.hour);
    progress.hours_total = static_cast<double>(assembly_.hours());
    progress.year_finished = year_ends;
    progress.year = static_cast<int>((statistics.hour + hours_per_year - 1) / hours_per_year);
    progress.eft_least = statistics.eft_least;
    progress.eft_most = statistics.eft_most;
    options_.progress(progress);
  }

  const assembly::Assembly& assembly_;
  const Options& options_;
  const std::atomic<bool>* stop_;
  std::set<long> due_;
  simulation::Simulation simulation_;
  simulation::Plausible plausible_;
  record::Journal journal_;
  record::ResultFile file_;
  std::vector<record::Hour> hours_;  // of the day so far
  std::vector<record::Hour> all_hours_;
  Clock::time_point saved_ = Clock::now();
};

}  // namespace

std::vector<Warning> run_march(const assembly::Assembly& assembly, const Options& options,
                               const record::Header& header) {
  Recording recording(assembly, options, header);
  recording.march();
  return recording.finish();
}

}  // namespace stillground::job
