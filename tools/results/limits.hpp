#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/record/frames.hpp"

namespace stillground::results {

/// How one limit fared over a run.
struct LimitOutcome {
  record::LimitRow limit;
  bool by_month = false;                    ///< judged by monthly means, else by hourly ones
  bool by_minute = false;                   ///< ... or by the farthest minute of each run-year
  long judged = 0;                          ///< hours with flow, whole months with flow, or run-years
  long beyond = 0;                          ///< of these, on the wrong side; standing exactly on the limit keeps it
  std::vector<long> beyond_by_year;         ///< [run-year - 1]; a month counts in the run-year of its first hour
  std::optional<std::size_t> first_beyond;  ///< first hour since the start, of the hour or month; none: kept
  double closest = 0;                     ///< the judged value furthest to the limit's side [K]; NaN if none was judged
  std::optional<std::size_t> closest_at;  ///< first hour of its period since the start
  std::vector<double> closest_by_year;    ///< [run-year - 1], the same of each run-year

  bool kept() const { return !first_beyond.has_value(); }

  /// From the limit to `closest`, negative beyond it [K]; NaN if none was judged.
  double margin() const { return limit.is_least ? closest - limit.value : limit.value - closest; }
};

/// Judges one limit. Hours without flow are not judged; a monthly mean is that of the month's hours with flow; months
/// that the run's start or end cuts are not judged, since a few days are no month. Of minutes each run-year's farthest
/// is judged, in the hour in which it is; where there is no estimate, nothing.
LimitOutcome judge(const record::LimitRow& limit, std::span<const record::Hour> hours, const Date& start,
                   std::span<const record::MinuteExtremes> minutes = {});

std::vector<LimitOutcome> judge_all(const record::Header& header, std::span<const record::Hour> hours,
                                    std::span<const record::MinuteExtremes> minutes);

/// Whether any of them is on "hour", "month" or "minute".
bool has_limit(const std::vector<LimitOutcome>& outcomes, const std::string& over);

/// The outcome that was first beyond its limit, of all; none if all were kept.
const LimitOutcome* first_broken(const std::vector<LimitOutcome>& outcomes);

/// The first run-year in which any limit was left; none if all were kept.
std::optional<int> first_year_beyond(const std::vector<LimitOutcome>& outcomes);

/// The limit that came nearest to being left, or was left farthest; none where nothing was judged.
const LimitOutcome* nearest(const std::vector<LimitOutcome>& outcomes);

/// From the nearest limit to what came closest to it, negative beyond it [K]; NaN where none was judged.
double margin_of(const std::vector<LimitOutcome>& outcomes);

/// Hours, or whole months, with flow in which at least one limit on hours, or on months, was left.
long periods_beyond(const record::Header& header, std::span<const record::Hour> hours, bool by_month);

/// Run-years in which at least one limit on minutes was left.
long minute_years_beyond(const std::vector<LimitOutcome>& outcomes);

}  // namespace stillground::results
