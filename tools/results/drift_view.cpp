#include "tools/results/drift_view.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstddef>

#include "engine/base/paragraph.hpp"
#include "engine/units/display.hpp"
#include "tools/results/celsius.hpp"
#include "tools/results/months.hpp"
#include "tools/results/trend.hpp"

namespace stillground::results {

namespace {

using present::Cell;
using present::Json;
using present::Table;

constexpr double notable_climate = 0.005;  ///< [K per decade]: below it the undisturbed ground is said to stand still

/// What a terminal shows of a long run: every year up to 30, then every fifth.
Table shortened(const Table& table) {
  if (table.rows.size() <= 30) return table;
  Table shorter{table.columns, {}};
  for (std::size_t y = 1; y <= table.rows.size(); ++y) {
    if (y == 1 || y % 5 == 0 || y == table.rows.size()) shorter.rows.push_back(table.rows[y - 1]);
  }
  return shorter;
}

std::string spoken_trend(const Drift& drift, UnitSystem system) {
  if (std::isnan(drift.trend)) return "none: it takes two run-years";
  const std::string block = units::text(drift.trend, "K", 3, system) + " per decade";
  return drift.yearly.middle_rise.empty()
             ? block
             : block + "; at the mid-points " + units::text(drift.middle_trend, "K", 3, system);
}

std::string figures(const Block& block, const Drift& drift, UnitSystem system) {
  const auto say = [system](double kept, const char* kind, int digits) {
    return units::text(kept, kind, digits, system);
  };
  const bool lone = drift.yearly.middle_rise.empty();
  std::string out = fmt::format("  ground block      {} on the plan (bores' hull and {} about it), {} to {} deep\n",
                                say(block.plan.area(), "m2", 0), say(block.plan.margin, "m", 1), say(block.top, "m", 1),
                                say(block.toe, "m", 1));
  out += "  trend             " + spoken_trend(drift, system) + "\n";
  out += fmt::format("  final change      {}{} (steady state under the last run-year's mean heat)\n",
                     say(drift.yearly.final_block, "K", 2),
                     lone ? "" : fmt::format("; at the mid-points {}", say(drift.yearly.final_middle, "K", 2)));
  out += fmt::format("  of it reached     {}\n",
                     std::isnan(drift.share) ? "-" : fmt::format("{:.0f} %", 100 * drift.share));
  out += fmt::format("  level from        {}\n",
                     drift.level_from ? fmt::format("run-year {}", *drift.level_from) : "not within the run");
  if (std::abs(drift.undisturbed_trend) >= notable_climate) {
    out += fmt::format("  without the field the same ground changes by {} per decade\n",
                       say(drift.undisturbed_trend, "K", 3));
  }
  return out;
}

Json level_json(const Drift& drift) {
  return drift.level_from ? Json(*drift.level_from) : Json(nullptr);
}

}  // namespace

Table drift_table(const Source& source, const Drift& drift) {
  const YearlyGround& yearly = drift.yearly;
  const bool lone = yearly.middle_rise.empty();
  Table table{{{"run_year", "", "run-year"},
               {"from", "", "from"},
               {"block_rise", "K", "block rise", 3},
               {"block_temperature", "degC", "block", 3},
               {"block_trend", "K/decade", "trend", 3},
               {"midpoint_rise", "K", "mid-point rise", 3},
               {"midpoint_temperature", "degC", "mid-points", 3},
               {"undisturbed", "degC", "undisturbed", 3}},
              {}};
  for (std::size_t y = 0; y < yearly.block_rise.size(); ++y) {
    const int year = static_cast<int>(y) + 1;
    const double still = celsius(yearly.undisturbed[y]);
    table.rows.push_back({static_cast<long>(year), iso(first_day_of(source.start, year)), yearly.block_rise[y],
                          still + yearly.block_rise[y], drift.block_trends[y],
                          lone ? Cell() : Cell(yearly.middle_rise[y]),
                          lone ? Cell() : Cell(still + yearly.middle_rise[y]), still});
  }
  return table;
}

std::string drift_text(const Source& source, const Block& block, const Drift& drift, UnitSystem system) {
  std::string out = source.title + "\n" + source.file + "\n\n";
  out += wrapped(verdict(drift, system), 100) + "\n\n";
  out += figures(block, drift, system);
  out += fmt::format("\nYearly means; a trend is that of the {} years up to its own\n", trend_years);
  out += present::text(present::in_system(shortened(drift_table(source, drift)), system));
  return out;
}

Json drift_json(const Source& source, const Block& block, const Drift& drift) {
  return {{"verb", "drift"},
          {"file", source.file},
          {"title", source.title},
          {"method", source.method},
          {"start", iso(source.start)},
          {"years", {{"value", source.years}, {"units", "year"}}},
          {"verdict", verdict(drift)},
          {"trend", present::quantity(drift.trend, "K/decade")},
          {"midpoint_trend", present::quantity(drift.middle_trend, "K/decade")},
          {"undisturbed_trend", present::quantity(drift.undisturbed_trend, "K/decade")},
          {"final_change", present::quantity(drift.yearly.final_block, "K")},
          {"midpoint_final_change", present::quantity(drift.yearly.final_middle, "K")},
          {"share_reached", present::quantity(drift.share, "1")},
          {"level_from", level_json(drift)},
          {"block",
           {{"area", present::quantity(block.plan.area(), "m2")},
            {"margin", present::quantity(block.plan.margin, "m")},
            {"top", present::quantity(block.top, "m")},
            {"toe", present::quantity(block.toe, "m")}}},
          {"yearly", present::columns(drift_table(source, drift))}};
}

}  // namespace stillground::results
