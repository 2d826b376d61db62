#include "engine/record/read/result.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <new>
#include <stdexcept>

#include "engine/base/errors.hpp"
#include "engine/record/hdf5/attribute.hpp"
#include "engine/record/read/source.hpp"
#include "engine/record/read/year_weights.hpp"

namespace stillground::record::read {

namespace {

/// Whatever goes wrong below is the file's fault: its name, and the library's own words.
template <class Body>
auto blaming(const std::filesystem::path& file, Body&& body) {
  try {
    return body();
  } catch (const hdf5::Failure& failure) {
    throw InputError({file.string()}, "", fmt::format("cannot be read: {}", failure.what()));
  } catch (const Mismatch& mismatch) {
    throw InputError({file.string()}, "", fmt::format("is damaged: {}", mismatch.what()));
  } catch (const std::bad_alloc&) {
    throw InputError({file.string()}, "", "does not fit into memory");
  }
}

/// By its name: scenarios are YAML.
bool names_scenario(const std::filesystem::path& path) {
  return path.extension() == ".yaml" || path.extension() == ".yml";
}

/// The file, if it is a complete result that this version can read.
hdf5::File open_result(const std::filesystem::path& path) {
  const auto refuse = [&](const std::string& why) -> InputError { return {{path.string()}, "", why}; };
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (!std::filesystem::exists(status)) throw refuse("does not exist");
  if (!std::filesystem::is_regular_file(status)) throw refuse("is not a file");
  hdf5::prepare_library();
  const bool readable = H5Fis_hdf5(path.c_str()) > 0;
  if (!readable && names_scenario(path)) {
    throw refuse("this is a scenario, not a result: `stillground run` makes one of it");
  }
  if (!readable) throw refuse("is not a result file (not HDF5, or not readable)");
  hdf5::File file = hdf5::File::open(path);
  if (!hdf5::has_attribute(file.id(), "stillground_format")) throw refuse("is not a result file of stillground");
  const auto format = hdf5::read_number<std::int32_t>(file.id(), "stillground_format");
  if (format > schema::format || format < 1) {
    throw refuse(fmt::format("has format {}; this version reads 1 to {}", format, schema::format));
  }
  if (!hdf5::has_attribute(file.id(), "complete") || hdf5::read_number<std::int32_t>(file.id(), "complete") != 1) {
    throw refuse("is not complete: the run that wrote it did not finish");
  }
  return file;
}

}  // namespace

struct Result::Open {
  std::filesystem::path path;
  Source source;
  Header header;
  std::vector<Hour> hours;
  std::vector<double> snapshot_times;
  std::vector<YearBalance> balances;
  std::vector<MinuteExtremes> minutes;

  Open(const std::filesystem::path& path_given, hdf5::File file)
      : path(path_given),
        source(std::move(file)),
        header(read_header(source)),
        hours(read_hours(source, header)),
        snapshot_times(read_snapshot_times(source)),
        balances(read_balances(source, header)),
        minutes(read_minutes(source, header)) {}
};

Result::Result(const std::filesystem::path& file)
    : open_(blaming(file, [&] { return std::make_unique<Open>(file, open_result(file)); })) {}

Result::~Result() = default;
Result::Result(Result&&) noexcept = default;
Result& Result::operator=(Result&&) noexcept = default;

const std::filesystem::path& Result::file() const {
  return open_->path;
}
const Header& Result::header() const {
  return open_->header;
}
const std::vector<Hour>& Result::hours() const {
  return open_->hours;
}
const std::vector<double>& Result::snapshot_times() const {
  return open_->snapshot_times;
}
const std::vector<YearBalance>& Result::balances() const {
  return open_->balances;
}
const std::vector<MinuteExtremes>& Result::minutes() const {
  return open_->minutes;
}
Snapshot Result::snapshot(std::size_t s) const {
  return blaming(file(), [&] { return read_snapshot(open_->source, open_->snapshot_times.at(s), s); });
}

std::vector<float> Result::year_mean_rise(int y) const {
  if (y < 0 || y >= header().years) throw std::out_of_range("year_mean_rise: no such run-year");
  return blaming(file(), [&] {
    const Source& source = open_->source;
    const auto year = static_cast<std::size_t>(y);
    if (source.has(schema::ground_rise_year_mean)) return source.row<float>(schema::ground_rise_year_mean, year);
    if (!source.has(schema::ground_rise))
      throw InputError({file().string()}, "", "holds no fields (record: {fields: none})");
    return weighted_rise(source, year_weights(snapshot_times(), y));
  });
}

std::vector<float> Result::steady_rise() const {
  return blaming(file(), [&] {
    if (!open_->source.has(schema::ground_rise_steady)) return std::vector<float>();
    return open_->source.all<float>(schema::ground_rise_steady);
  });
}

}  // namespace stillground::record::read
