#include "engine/record/spool/spool.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <stdexcept>
#include <utility>

#include "engine/base/errors.hpp"
#include "engine/record/spool/frame_bytes.hpp"
#include "engine/record/spool/identity.hpp"
#include "engine/record/spool/log_file.hpp"

namespace stillground::record {

namespace {

enum RecordType : std::uint32_t {
  identity_record = 1,
  hour_record = 2,
  snapshot_record = 3,
  year_mean_record = 4,
  balance_record = 5,
  checkpoint_record = 6
};

std::filesystem::path spool_path(const std::filesystem::path& result) {
  return result.string() + ".spool";
}

/// Hours and balances are small and kept; of the fields only where their records begin.
struct Contents {
  std::vector<Hour> hours;
  std::vector<YearBalance> balances;
  std::vector<LogFile::Offset> snapshots;
  std::vector<LogFile::Offset> year_means;
  Bytes state;
};

void check_identity(const LogFile& log, std::span<const std::byte> bytes, const Header& header) {
  const auto differing = differences(decode_identity(bytes), identity_of(header));
  if (differing.empty()) return;
  throw InputError(
      {log.path().string()}, "",
      fmt::format("belongs to another run and cannot be gone on with; these differ: {}. Put them back, or start "
                  "the run anew",
                  fmt::join(differing, ", ")));
}

/// A checkpoint says where it stands, so that a record lost or doubled before it cannot go unnoticed.
Bytes decode_checkpoint(const LogFile::Record& record) {
  Decoder decoder(record.bytes);
  if (decoder.number<std::uint64_t>() != record.at) throw std::out_of_range("a checkpoint stands in the wrong place");
  return decoder.array<std::byte>();
}

}  // namespace

struct Spool::File {
  LogFile log;
  Contents contents;
};

namespace {

/// Everything up to the last intact checkpoint (at the least the identity), and where that ends.
class Recovery {
 public:
  Recovery(LogFile& log, const Header& header) {
    try {
      log.scan([&](const LogFile::Record& record) { visit(log, record, header); });
    } catch (const std::out_of_range&) {
      // A record that is whole by its CRC and still makes no sense: what came before its checkpoint stands.
    }
    if (end_ == 0) throw InputError({log.path().string()}, "", "is damaged at its beginning; start the run anew");
  }

  LogFile::Offset end() const { return end_; }
  Contents kept() && { return std::move(kept_); }

 private:
  void visit(const LogFile& log, const LogFile::Record& record, const Header& header) {
    const bool first = !seen_;
    seen_ = true;
    if (first != (record.type == identity_record)) throw std::out_of_range("the identity is not the first record");
    switch (record.type) {
      case identity_record:
        check_identity(log, record.bytes, header);
        keep(record);
        return;
      case hour_record:
        open_.hours.push_back(decode_hour(record.bytes));
        return;
      case balance_record:
        open_.balances.push_back(decode_year_balance(record.bytes));
        return;
      case snapshot_record:
        open_.snapshots.push_back(record.at);
        return;
      case year_mean_record:
        open_.year_means.push_back(record.at);
        return;
      case checkpoint_record:
        kept_.state = decode_checkpoint(record);
        keep(record);
        return;
      default:
        throw std::out_of_range("a record of an unknown type");
    }
  }

  /// What was open until here is now behind a checkpoint.
  void keep(const LogFile::Record& record) {
    move_over(open_.hours, kept_.hours);
    move_over(open_.balances, kept_.balances);
    move_over(open_.snapshots, kept_.snapshots);
    move_over(open_.year_means, kept_.year_means);
    end_ = record.at + LogFile::head_size + record.bytes.size();
  }

  template <class T>
  static void move_over(std::vector<T>& from, std::vector<T>& to) {
    to.insert(to.end(), from.begin(), from.end());
    from.clear();
  }

  Contents kept_, open_;
  LogFile::Offset end_ = 0;
  bool seen_ = false;
};

}  // namespace

Spool::Spool(std::unique_ptr<File> file) : file_(std::move(file)) {}
Spool::~Spool() = default;
Spool::Spool(Spool&&) noexcept = default;
Spool& Spool::operator=(Spool&&) noexcept = default;

Spool Spool::create(const std::filesystem::path& result, const Header& header) {
  auto file = std::make_unique<File>(File{LogFile::create(spool_path(result)), {}});
  file->log.append(identity_record, encode(identity_of(header)));
  file->log.sync();
  return Spool(std::move(file));
}

Spool Spool::resume(const std::filesystem::path& result, const Header& header) {
  LogFile log = LogFile::open(spool_path(result));
  Recovery recovery(log, header);
  log.cut(recovery.end());
  return Spool(std::make_unique<File>(File{std::move(log), std::move(recovery).kept()}));
}

void Spool::append(const Hour& hour) {
  file_->log.append(hour_record, encode(hour));
  file_->contents.hours.push_back(hour);
}

void Spool::append(const Snapshot& snapshot) {
  file_->contents.snapshots.push_back(file_->log.append(snapshot_record, encode(snapshot)));
}

void Spool::append(const YearMean& mean) {
  file_->contents.year_means.push_back(file_->log.append(year_mean_record, encode(mean)));
}

void Spool::append(const YearBalance& balance) {
  file_->log.append(balance_record, encode(balance));
  file_->contents.balances.push_back(balance);
}

void Spool::checkpoint(std::span<const std::byte> state) {
  Encoder encoder;
  encoder.number(file_->log.end()).array(state);
  file_->log.append(checkpoint_record, encoder.bytes());
  file_->log.sync();
  file_->contents.state.assign(state.begin(), state.end());
}

const std::vector<std::byte>& Spool::state() const {
  return file_->contents.state;
}
std::vector<Hour> Spool::hours() const {
  return file_->contents.hours;
}
std::vector<YearBalance> Spool::balances() const {
  return file_->contents.balances;
}
std::size_t Spool::snapshot_count() const {
  return file_->contents.snapshots.size();
}
std::size_t Spool::year_mean_count() const {
  return file_->contents.year_means.size();
}

Snapshot Spool::snapshot(std::size_t s) const {
  return decode_snapshot(file_->log.read(file_->contents.snapshots.at(s)));
}

YearMean Spool::year_mean(std::size_t y) const {
  return decode_year_mean(file_->log.read(file_->contents.year_means.at(y)));
}

void Spool::discard() {
  file_->log.remove();
}

}  // namespace stillground::record
