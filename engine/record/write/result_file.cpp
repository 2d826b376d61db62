#include "engine/record/write/result_file.hpp"

#include <fmt/format.h>

#include <numeric>
#include <optional>
#include <utility>

#include "engine/base/errors.hpp"
#include "engine/base/pending_file.hpp"
#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/write/background.hpp"
#include "engine/record/write/contents.hpp"

namespace stillground::record {

namespace {

/// Frames may wait for the thread up to this size [bytes]: some 400 months of 15 groups, 8 of a thousand.
constexpr std::size_t may_wait = std::size_t{64} << 20;

/// Hours are handed over by the year: by then they fill the chunks, and one job is enough.
constexpr std::size_t hours_at_once = hours_per_year;

ResultWriter::Lengths lengths_of(const Header& header, std::size_t snapshots) {
  using schema::Dim;
  return {{Dim::time, static_cast<std::size_t>(header.years) * hours_per_year},
          {Dim::bound, 2},
          {Dim::snapshot, snapshots},
          {Dim::year, static_cast<std::size_t>(header.years)},
          {Dim::group, static_cast<std::size_t>(header.groups)},
          {Dim::z, header.z.size()},
          {Dim::r, header.r.size()},
          {Dim::bore, header.bores.size()}};
}

/// Calls `work` and turns the library's failures into an error that names the file.
template <class Work>
auto naming(const std::filesystem::path& path, Work&& work) {
  try {
    return work();
  } catch (const hdf5::Failure& failure) {
    throw SystemError(fmt::format("{}: {}", path.string(), failure.what()));
  }
}

std::size_t bytes_of(const Snapshot& snapshot) {
  const std::size_t doubles = snapshot.undisturbed.size() + snapshot.wall_temperature.size() +
                              snapshot.fluid_down.size() + snapshot.fluid_up.size() + snapshot.grout.size() +
                              snapshot.fluid_heat.size();
  return snapshot.rise.size() * sizeof(float) + doubles * sizeof(double);
}

/// The file's variables. Whatever is not the thread's job is done before the first or after the last of them.
struct Variables {
  Variables(const hdf5::File& file, const Header& header, std::size_t snapshot_count)
      : writer(file, header.start, lengths_of(header, snapshot_count)), hours(writer, header) {
    put_header(writer, header);
    if (header.method == "march") balances.emplace(writer);  // a screening estimate keeps no account
    if (snapshot_count > 0) snapshots.emplace(writer);
    if (header.fields == "yearly") year_means.emplace(writer, schema::ground_rise_year_mean);
  }

  void close(const Closing& closing) {
    hours.close();
    if (balances) balances->close();
    if (!balances && !closing.minutes.empty()) put_years(closing.minutes.size());
    put_minutes(writer, closing.minutes);
    if (snapshots) snapshots->close();
    if (year_means) year_means->close();
    if (!closing.steady_rise.empty()) writer.put(schema::ground_rise_steady, closing.steady_rise);
  }

  /// A screening estimate has the years for its minutes alone.
  void put_years(std::size_t count) {
    std::vector<std::int32_t> years(count);
    std::iota(years.begin(), years.end(), 1);
    writer.put(schema::year, years);
  }

  ResultWriter writer;
  HourColumns hours;
  std::optional<BalanceColumns> balances;
  std::optional<SnapshotColumns> snapshots;
  std::optional<Column<float>> year_means;
};

template <class Columns>
Columns& expected(std::optional<Columns>& columns) {
  if (!columns) throw std::logic_error("the header does not say that such frames would come");
  return *columns;
}

}  // namespace

struct ResultFile::Open {
  Open(std::filesystem::path final_name, const Header& run, std::size_t snapshot_count)
      : path(std::move(final_name)),
        header(run),
        pending(path),
        file(naming(path, [&] { return hdf5::File::create(pending.temporary()); })) {
    naming(path, [&] { variables.emplace(file, header, snapshot_count); });
    hours.reserve(hours_at_once);
  }

  void post(std::function<void()> job, std::size_t bytes) {
    thread.post(
        [this, job = std::move(job)] {
          hdf5::prepare_library();
          naming(path, job);
        },
        bytes);
  }

  void hand_over_hours() {
    if (hours.empty()) return;
    std::vector<Hour> full;
    full.reserve(hours_at_once);
    std::swap(full, hours);
    const std::size_t bytes = full.size() * sizeof(Hour);
    post([this, full = std::move(full)] { variables->hours.add(full); }, bytes);
  }

  std::filesystem::path path;
  Header header;
  PendingFile pending;
  hdf5::File file;
  std::optional<Variables> variables;
  std::vector<Hour> hours;  // not yet handed over
  Background thread{may_wait};
};

ResultFile::ResultFile(std::filesystem::path path, const Header& header, std::size_t snapshots)
    : open_(std::make_unique<Open>(std::move(path), header, snapshots)) {}

ResultFile::~ResultFile() = default;

void ResultFile::add(std::span<const Hour> hours) {
  while (!hours.empty()) {
    const std::size_t taken = std::min(hours.size(), hours_at_once - open_->hours.size());
    open_->hours.insert(open_->hours.end(), hours.begin(), hours.begin() + static_cast<std::ptrdiff_t>(taken));
    hours = hours.subspan(taken);
    if (open_->hours.size() == hours_at_once) open_->hand_over_hours();
  }
}

void ResultFile::add(Snapshot snapshot) {
  const std::size_t bytes = bytes_of(snapshot);
  open_->post([this, shot = std::move(snapshot)] { expected(open_->variables->snapshots).add(shot); }, bytes);
}

void ResultFile::add(YearMean mean) {
  const std::size_t bytes = mean.rise.size() * sizeof(float);
  open_->post([this, kept = std::move(mean)] { expected(open_->variables->year_means).add(kept.rise); }, bytes);
}

void ResultFile::add(const YearBalance& balance) {
  open_->post([this, balance] { expected(open_->variables->balances).add(balance); }, sizeof balance);
}

void ResultFile::finish(const Closing& closing) {
  open_->hand_over_hours();
  open_->thread.finish();
  naming(open_->path, [&] {
    open_->variables->close(closing);
    open_->variables.reset();
    put_attributes(open_->file, open_->header, closing);
    hdf5::change_number<std::int32_t>(open_->file.id(), "complete", 1);
    open_->file.close();
  });
  open_->pending.commit();
}

}  // namespace stillground::record
