#include "tools/results/energy_view.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <utility>

namespace stillground::results {

namespace {

using present::Cell;
using present::Column;
using present::Table;

struct Field {
  Column column;
  Cell (*get)(const energy::Sum&);
};

Cell held(long hours, const energy::Sum& sum) {
  return sum.curves_known ? Cell(hours) : Cell();
}

/// All that is told of a stretch of hours in a run with these duties.
std::vector<Field> fields_of(const EnergySummary& energy) {
  using energy::Sum;
  std::vector<Field> fields;
  const auto add = [&](bool wanted, Column column, Cell (*get)(const Sum&)) {
    if (wanted) fields.push_back({std::move(column), get});
  };
  const bool pump = energy.has_heat_pump, hot_water = energy.all.hot_water > 0, direct = energy.all.cooling_direct > 0;
  add(pump, {"heating", "MWh", "heating"}, [](const Sum& s) { return Cell(s.heating / joules_per_mwh); });
  add(hot_water, {"hot_water", "MWh", "hot water"}, [](const Sum& s) { return Cell(s.hot_water / joules_per_mwh); });
  add(pump, {"cooling", "MWh", "cooling"}, [](const Sum& s) { return Cell(s.cooling / joules_per_mwh); });
  add(direct, {"cooling_direct", "MWh", "direct"},
      [](const Sum& s) { return Cell(s.cooling_direct / joules_per_mwh); });
  add(direct, {"direct_share", "1", "direct share"}, [](const Sum& s) { return Cell(s.direct_share()); });
  add(pump, {"power", "kWh", "electricity"}, [](const Sum& s) { return Cell(s.power / joules_per_kwh); });
  add(pump, {"power_heating", "kWh"}, [](const Sum& s) { return Cell(s.power_heating() / joules_per_kwh); });
  add(hot_water, {"power_hot_water", "kWh"}, [](const Sum& s) { return Cell(s.power_hot_water / joules_per_kwh); });
  add(pump, {"power_cooling", "kWh"}, [](const Sum& s) { return Cell(s.power_cooling / joules_per_kwh); });
  add(pump, {"performance", "", "SPF"}, [](const Sum& s) { return Cell(s.performance()); });
  add(pump, {"performance_heating", "", "SPF heat"}, [](const Sum& s) { return Cell(s.performance_heating()); });
  add(pump, {"performance_cooling", "", "SPF cool"}, [](const Sum& s) { return Cell(s.performance_cooling()); });
  add(true, {"from_ground", "MWh", "from ground"}, [](const Sum& s) { return Cell(s.from_ground / joules_per_mwh); });
  add(true, {"into_ground", "MWh", "into ground"}, [](const Sum& s) { return Cell(s.into_ground / joules_per_mwh); });
  add(pump, {"held_heating", "h"}, [](const Sum& s) { return held(s.heating_held, s); });
  add(hot_water, {"held_hot_water", "h"}, [](const Sum& s) { return held(s.hot_water_held, s); });
  add(pump, {"held_cooling", "h"}, [](const Sum& s) { return held(s.cooling_held, s); });
  return fields;
}

/// What a terminal has room for, in the terminal's digits.
Table for_people(const std::vector<energy::Sum>& sums, const EnergySummary& energy, UnitSystem system) {
  const Table all = energy_table(sums, energy);
  Table shown{{}, std::vector<std::vector<Cell>>(sums.size())};
  for (std::size_t c = 0; c < all.columns.size(); ++c) {
    Column column = all.columns[c];
    if (column.heading.empty() || column.name == "cooling_direct") continue;
    const bool share = column.name == "direct_share";
    if (share) column.units = "%";
    column.digits = column.units == "MWh" && system == UnitSystem::si ? 1 : column.units.empty() ? 2 : 0;
    for (std::size_t r = 0; r < sums.size(); ++r) {
      shown.rows[r].push_back(share ? Cell(100 * sums[r].direct_share()) : all.rows[r][c]);
    }
    shown.columns.push_back(std::move(column));
  }
  return present::in_system(std::move(shown), system);
}

/// A table whose first column are these words.
Table named(const std::string& heading, const std::vector<std::string>& words, const Table& rest) {
  Table table{{{"", "", heading}}, {}};
  for (const std::string& word : words) table.rows.push_back({word});
  append_columns(table, rest);
  return table;
}

energy::Sum mean_of(const EnergySummary& energy) {
  energy::Sum mean = energy.all;
  const auto years = static_cast<double>(energy.years.size());
  for (double* part : {&mean.heating, &mean.hot_water, &mean.cooling, &mean.cooling_direct, &mean.power,
                       &mean.power_hot_water, &mean.power_cooling, &mean.from_ground, &mean.into_ground}) {
    *part /= years;
  }
  return mean;
}

}  // namespace

Table energy_table(const std::vector<energy::Sum>& sums, const EnergySummary& energy) {
  const std::vector<Field> fields = fields_of(energy);
  Table table;
  for (const Field& field : fields) table.columns.push_back(field.column);
  for (const energy::Sum& sum : sums) {
    auto& row = table.rows.emplace_back();
    for (const Field& field : fields) row.push_back(field.get(sum));
  }
  return table;
}

void append_columns(Table& table, const Table& more) {
  table.columns.insert(table.columns.end(), more.columns.begin(), more.columns.end());
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    table.rows[r].insert(table.rows[r].end(), more.rows.at(r).begin(), more.rows.at(r).end());
  }
}

Table energy_year_table(const FluidSummary& summary, UnitSystem system) {
  const EnergySummary& energy = summary.energy;
  std::vector<std::string> words;
  std::vector<energy::Sum> sums;
  for (const int year : named_years(static_cast<int>(energy.years.size()))) {
    words.push_back(fmt::format("{}", year));
    sums.push_back(energy.years[static_cast<std::size_t>(year - 1)]);
  }
  words.emplace_back("mean");
  sums.push_back(mean_of(energy));
  return named("run-year", words, for_people(sums, energy, system));
}

Table energy_month_table(const FluidSummary& summary, UnitSystem system) {
  std::vector<std::string> words;
  std::vector<energy::Sum> sums;
  for (std::size_t m = 0; m < summary.months.size(); ++m) {
    if (summary.months[m].run_year != summary.years.back().run_year) continue;
    words.emplace_back(month_name(summary.months[m].span.month));
    sums.push_back(summary.energy.months[m]);
  }
  return named("month", words, for_people(sums, summary.energy, system));
}

std::string held_text(const EnergySummary& energy) {
  if (!energy.all.curves_known) return "";
  const energy::Sum& all = energy.all;
  if (all.heating_held + all.hot_water_held + all.cooling_held == 0) {
    return "In every hour the EFT lay within the COP curves' points.\n";
  }
  std::string text = fmt::format("Hours in which a COP was held beyond its curve's points: heating {}, cooling {}",
                                 all.heating_held, all.cooling_held);
  if (all.hot_water > 0) text += fmt::format(", hot water {}", all.hot_water_held);
  return text + ".\n";
}

std::string energy_text(const FluidSummary& summary, UnitSystem system) {
  std::string out = summary.energy.has_heat_pump ? "Heat, and the heat pumps' electricity\n" : "Heat\n";
  out += present::text(energy_year_table(summary, system)) + held_text(summary.energy);
  out += fmt::format("\nThe same month by month, run-year {}\n", summary.years.back().run_year);
  return out + present::text(energy_month_table(summary, system));
}

present::Json energy_json(const EnergySummary& energy) {
  const Table table = energy_table({energy.all}, energy);
  present::Json object = present::Json::object();
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    object[table.columns[c].name] = present::single(table.rows[0][c], table.columns[c].units);
  }
  return object;
}

}  // namespace stillground::results
