#include "engine/record/write/result_file.hpp"

#include <fmt/format.h>

#include "engine/base/errors.hpp"
#include "engine/base/pending_file.hpp"
#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/write/contents.hpp"

namespace stillground::record {

namespace {

Draft::Lengths lengths_of(const Header& header, const Spool& spool) {
  using schema::Dim;
  return {{Dim::time, static_cast<std::size_t>(header.years) * hours_per_year},
          {Dim::bound, 2},
          {Dim::snapshot, spool.snapshot_count()},
          {Dim::year, static_cast<std::size_t>(header.years)},
          {Dim::group, static_cast<std::size_t>(header.groups)},
          {Dim::z, header.z.size()},
          {Dim::r, header.r.size()},
          {Dim::bore, header.bores.size()}};
}

void put_everything(const hdf5::File& file, const Header& header, const Spool& spool, const Closing& closing) {
  put_attributes(file, header, closing);
  Draft draft(file, header.start, lengths_of(header, spool));
  put_hours(draft, header, spool.hours());
  put_header(draft, header);
  put_balances(draft, spool.balances());
  put_fields(draft, spool, closing);
}

}  // namespace

void write_result(const std::filesystem::path& path, const Header& header, const Spool& spool, const Closing& closing) {
  PendingFile pending(path);
  try {
    hdf5::File file = hdf5::File::create(pending.temporary());
    put_everything(file, header, spool, closing);
    hdf5::change_number<std::int32_t>(file.id(), "complete", 1);
    file.close();
  } catch (const hdf5::Failure& failure) {
    throw SystemError(fmt::format("{}: {}", path.string(), failure.what()));
  }
  pending.commit();
}

}  // namespace stillground::record
