#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "engine/record/frames.hpp"

namespace stillground::record::read {

/// A finished result file, read-only. Temperatures come back in kelvin, times in seconds, as in the frames.
/// The hourly series are read when the file is opened; fields are read when asked for.
class Result {
 public:
  /// Throws InputError naming the file if it is missing, not ours, not complete, or from a newer format.
  explicit Result(const std::filesystem::path& file);
  ~Result();
  Result(Result&&) noexcept;
  Result& operator=(Result&&) noexcept;

  const std::filesystem::path& file() const;
  const Header& header() const;
  const std::vector<Hour>& hours() const;              ///< 8760 x years
  const std::vector<double>& snapshot_times() const;   ///< [s] since the start; empty with `fields: none`
  const std::vector<YearBalance>& balances() const;    ///< one a run-year; none of a screening estimate
  const std::vector<MinuteExtremes>& minutes() const;  ///< one a run-year; none in a file from before they were kept

  /// The s-th snapshot, s < snapshot_times().size().
  Snapshot snapshot(std::size_t s) const;

  /// Mean rise of run-year y (0-based), [group][z][r]: as recorded with `fields: yearly`, else the trapezoid rule over
  /// the year's monthly snapshots (exact for a rise linear within the month). Throws InputError if the file has no
  /// fields.
  std::vector<float> year_mean_rise(int y) const;

  /// Steady rise under the last run-year's mean heat, [group][z][r]; empty if the file has no fields.
  std::vector<float> steady_rise() const;

 private:
  struct Open;
  std::unique_ptr<Open> open_;
};

}  // namespace stillground::record::read
