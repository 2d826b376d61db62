#include "engine/record/spool/spool.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <optional>
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
  hours_record = 2,
  snapshot_record = 3,
  year_mean_record = 4,
  balance_record = 5,
  checkpoint_record = 6
};

std::filesystem::path spool_path(const std::filesystem::path& result) {
  return result.string() + ".spool";
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

struct Spool::File {
  LogFile log;
  Bytes state;
};

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
  return Spool(std::make_unique<File>(File{std::move(log), std::move(recovery).state()}));
}

std::optional<Spool::Saved> Spool::look(const std::filesystem::path& result) {
  if (!std::filesystem::exists(spool_path(result))) return std::nullopt;
  LogFile log = LogFile::open(spool_path(result));
  Saved saved;
  log.scan([&](const LogFile::Record& record) {
    if (record.type == identity_record) saved.instruction_set = instruction_set_of(record.bytes);
    saved.checkpoint = record.type == checkpoint_record;
    return !saved.checkpoint;
  });
  return saved;
}

void Spool::append(std::span<const Hour> hours) {
  file_->log.append(hours_record, encode(hours));
}

void Spool::append(const Snapshot& snapshot) {
  file_->log.append(snapshot_record, encode(snapshot));
}

void Spool::append(const YearMean& mean) {
  file_->log.append(year_mean_record, encode(mean));
}

void Spool::append(const YearBalance& balance) {
  file_->log.append(balance_record, encode(balance));
}

void Spool::checkpoint(std::span<const std::byte> state) {
  Encoder encoder;
  encoder.number(file_->log.end()).array(state);
  file_->log.append(checkpoint_record, encoder.bytes());
  file_->log.sync();
  file_->state.assign(state.begin(), state.end());
}

const std::vector<std::byte>& Spool::state() const {
  return file_->state;
}
void Spool::replay(const std::function<void(Frame)>& each) {
  file_->log.scan([&](const LogFile::Record& record) {
    if (auto frame = decode_frame(record)) each(std::move(*frame));
    return true;
  });
}

void Spool::discard() {
  file_->log.remove();
}

}  // namespace stillground::record
