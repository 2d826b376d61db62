#include "engine/record/journal/journal.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <optional>
#include <stdexcept>
#include <utility>

#include "engine/base/errors.hpp"
#include "engine/record/journal/frame_bytes.hpp"
#include "engine/record/journal/identity.hpp"
#include "engine/record/journal/log_file.hpp"

namespace stillground::record {

namespace {

enum RecordType : std::uint32_t {
  identity_record = 1,
  hours_record = 2,
  snapshot_record = 3,
  year_mean_record = 4,
  balance_record = 5,
  checkpoint_record = 6
};

std::filesystem::path journal_path(const std::filesystem::path& result) {
  return result.string() + ".spool";  // the journal's name as users know it
}

void check_identity(const LogFile& log, std::span<const std::byte> bytes, const Header& header) {
  const auto differing = differences(decode_identity(bytes), identity_of(header));
  if (differing.empty()) return;
  throw InputError(
      {log.path().string()}, "",
      fmt::format("belongs to another run and cannot be gone on with; these differ: {}. Put them back, or start "
                  "again with --fresh",
                  fmt::join(differing, ", ")));
}

std::string instruction_set_of(std::span<const std::byte> bytes) {
  try {
    return instruction_set(decode_identity(bytes));
  } catch (const std::out_of_range&) {
    return "";  // whoever resumes is told that it is damaged
  }
}

/// A checkpoint says where it stands, so that a record lost or doubled before it cannot go unnoticed.
Bytes decode_checkpoint(const LogFile::Record& record) {
  Decoder decoder(record.bytes);
  if (decoder.number<std::uint64_t>() != record.at) throw std::out_of_range("a checkpoint stands in the wrong place");
  return decoder.array<std::byte>();
}

/// The frame that a record holds; nothing for the others. Throws std::out_of_range for a record of an unknown type.
std::optional<Frame> decode_frame(const LogFile::Record& record) {
  switch (record.type) {
    case hours_record:
      return decode_hours(record.bytes);
    case snapshot_record:
      return decode_snapshot(record.bytes);
    case year_mean_record:
      return decode_year_mean(record.bytes);
    case balance_record:
      return decode_year_balance(record.bytes);
    case identity_record:
    case checkpoint_record:
      return std::nullopt;
    default:
      throw std::out_of_range("a record of an unknown type");
  }
}

/// Where the last intact checkpoint (at the least the identity) ends, and the state that it holds.
class Recovery {
 public:
  Recovery(LogFile& log, const Header& header) {
    try {
      log.scan([&](const LogFile::Record& record) {
        visit(log, record, header);
        return true;
      });
    } catch (const std::out_of_range&) {
      // A record that is whole by its CRC and still makes no sense: what came before its checkpoint stands.
    }
    if (end_ == 0) throw InputError({log.path().string()}, "", "is damaged at its beginning; start again with --fresh");
  }

  LogFile::Offset end() const { return end_; }
  Bytes state() && { return std::move(state_); }

 private:
  void visit(const LogFile& log, const LogFile::Record& record, const Header& header) {
    const bool first = !seen_;
    seen_ = true;
    if (first != (record.type == identity_record)) throw std::out_of_range("the identity is not the first record");
    if (record.type == identity_record) {
      check_identity(log, record.bytes, header);
    } else if (record.type == checkpoint_record) {
      state_ = decode_checkpoint(record);
    } else {
      decode_frame(record);
      return;
    }
    end_ = record.at + LogFile::head_size + record.bytes.size();
  }

  Bytes state_;
  LogFile::Offset end_ = 0;
  bool seen_ = false;
};

}  // namespace

struct Journal::File {
  LogFile log;
  Bytes state;
};

Journal::Journal(std::unique_ptr<File> file) : file_(std::move(file)) {}
Journal::~Journal() = default;
Journal::Journal(Journal&&) noexcept = default;
Journal& Journal::operator=(Journal&&) noexcept = default;

Journal Journal::create(const std::filesystem::path& result, const Header& header) {
  auto file = std::make_unique<File>(File{LogFile::create(journal_path(result)), {}});
  file->log.append(identity_record, encode(identity_of(header)));
  file->log.sync();
  return Journal(std::move(file));
}

Journal Journal::resume(const std::filesystem::path& result, const Header& header) {
  LogFile log = LogFile::open(journal_path(result));
  Recovery recovery(log, header);
  log.cut(recovery.end());
  return Journal(std::make_unique<File>(File{std::move(log), std::move(recovery).state()}));
}

std::optional<Journal::Saved> Journal::look(const std::filesystem::path& result) {
  if (!std::filesystem::exists(journal_path(result))) return std::nullopt;
  LogFile log = LogFile::open(journal_path(result));
  Saved saved;
  log.scan([&](const LogFile::Record& record) {
    if (record.type == identity_record) saved.instruction_set = instruction_set_of(record.bytes);
    saved.checkpoint = record.type == checkpoint_record;
    return !saved.checkpoint;
  });
  return saved;
}

void Journal::append(std::span<const Hour> hours) {
  file_->log.append(hours_record, encode(hours));
}

void Journal::append(const Snapshot& snapshot) {
  file_->log.append(snapshot_record, encode(snapshot));
}

void Journal::append(const YearMean& mean) {
  file_->log.append(year_mean_record, encode(mean));
}

void Journal::append(const YearBalance& balance) {
  file_->log.append(balance_record, encode(balance));
}

void Journal::checkpoint(std::span<const std::byte> state) {
  Encoder encoder;
  encoder.number(file_->log.end()).array(state);
  file_->log.append(checkpoint_record, encoder.bytes());
  file_->log.sync();
  file_->state.assign(state.begin(), state.end());
}

const std::vector<std::byte>& Journal::state() const {
  return file_->state;
}
void Journal::replay(const std::function<void(Frame)>& each) {
  file_->log.scan([&](const LogFile::Record& record) {
    if (auto frame = decode_frame(record)) each(std::move(*frame));
    return true;
  });
}

void Journal::discard() {
  file_->log.remove();
}

}  // namespace stillground::record
