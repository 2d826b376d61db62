#include <stillground/result.hpp>

#include <cmath>
#include <limits>

#include "engine/record/read/result.hpp"

namespace stillground {

namespace {

/// Does not compile once Heading has another member: then `heading_of` below fills it, too.
[[maybe_unused]] void names_every_member(const Heading& heading) {
  [[maybe_unused]] const auto& [title, method, start, years, step, has_heat_pump, drill_length, eft_error,
                                screening_error, bores, limits, warnings, cautions, scenario, engine_version, build,
                                instruction_set] = heading;
}

Heading heading_of(const record::Header& header) {
  return {.title = header.title,
          .method = header.method,
          .start = header.start,
          .years = header.years,
          .step = header.step,
          .has_heat_pump = header.has_heat_pump,
          .drill_length = header.drill_length,
          .eft_error = header.eft_error,
          .screening_error = header.screening_error,
          .bores = header.bores,
          .limits = header.limits,
          .warnings = header.warnings,
          .cautions = header.cautions,
          .scenario = header.scenario_text,
          .engine_version = header.engine_version,
          .build = header.build,
          .instruction_set = header.instruction_set};
}

}  // namespace

struct Result::Open {
  record::read::Result file;
  Heading heading;
};

Result::Result(const std::filesystem::path& file) {
  record::read::Result result(file);
  Heading heading = heading_of(result.header());
  open_ = std::make_unique<Open>(Open{std::move(result), std::move(heading)});
}

Result::~Result() = default;
Result::Result(Result&&) noexcept = default;
Result& Result::operator=(Result&&) noexcept = default;

const Heading& Result::heading() const {
  return open_->heading;
}

const std::vector<Hour>& Result::hours() const {
  return open_->file.hours();
}

const std::vector<YearBalance>& Result::balances() const {
  return open_->file.balances();
}

const std::vector<MinuteExtremes>& Result::minutes() const {
  return open_->file.minutes();
}

std::vector<YearExtremes> Result::extremes() const {
  constexpr double none = std::numeric_limits<double>::quiet_NaN();
  std::vector<YearExtremes> years;
  for (int year = 1; year <= heading().years; ++year) {
    YearExtremes found{.year = year, .eft_least = none, .eft_most = none};
    for (long hour = long{hours_per_year} * (year - 1); hour < long{hours_per_year} * year; ++hour) {
      const Hour& at = hours()[static_cast<std::size_t>(hour)];
      if (!(at.flow > 0)) continue;
      if (found.hour_least < 0 || at.eft < found.eft_least) found.eft_least = at.eft, found.hour_least = hour;
      if (found.hour_most < 0 || at.eft > found.eft_most) found.eft_most = at.eft, found.hour_most = hour;
    }
    years.push_back(found);
  }
  return years;
}

}  // namespace stillground
