#pragma once

#include <stillground/date.hpp>
#include <stillground/export.hpp>
#include <stillground/frames.hpp>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace stillground {

/// What a result says of the run that made it.
struct Heading {
  std::string title;
  std::string method;  ///< "march" or "screening"
  Date start;          ///< at midnight
  int years = 0;
  double step = 0;             ///< [s]
  bool has_heat_pump = false;  ///< else `heating`, `cooling` and `power` of the hours are 0
  double drill_length = 0;     ///< metres to drill, as the scenario counts them [m]
  ErrorEstimate eft_error;
  ScreeningError screening_error;  ///< of a screening
  std::vector<BoreRow> bores;
  std::vector<LimitRow> limits;
  std::vector<std::string> warnings;  ///< all of the run
  std::vector<std::string> cautions;  ///< what whoever builds the field must mind, most pressing first
  std::string scenario;               ///< the scenario file's whole text
  std::string engine_version;
  std::string build;            ///< compiler and flags
  std::string instruction_set;  ///< of the kernels
};

/// The extremes of a run-year's hours with flow. Not a number where the fluid stands all year.
struct YearExtremes {
  int year = 0;          ///< run-year, from 1
  double eft_least = 0;  ///< [K]
  double eft_most = 0;   ///< [K]
  long hour_least = -1;  ///< of the run, the first in which it occurs; -1: none
  long hour_most = -1;
};

/// A finished result file, read-only; its hours are read when it is opened.
class STILLGROUND_EXPORT Result {
 public:
  /// Throws InputError naming the file if it is missing, not ours, not complete, damaged, or from a newer format. Not
  /// from two threads at once.
  explicit Result(const std::filesystem::path& file);
  ~Result();
  Result(Result&&) noexcept;
  Result& operator=(Result&&) noexcept;

  const Heading& heading() const;
  const std::vector<Hour>& hours() const;              ///< 8760 x years; hour n ends n + 1 hours after the start
  const std::vector<YearBalance>& balances() const;    ///< one a run-year; none of a screening estimate
  std::vector<YearExtremes> extremes() const;          ///< one a run-year
  const std::vector<MinuteExtremes>& minutes() const;  ///< one a run-year; none in a file from before they were kept

 private:
  struct Open;
  std::unique_ptr<Open> open_;
};

}  // namespace stillground
