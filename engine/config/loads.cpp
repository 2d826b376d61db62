#include <fmt/format.h>

#include <cmath>

#include "engine/base/quote.hpp"
#include "engine/config/hourly.hpp"
#include "engine/config/monthly.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// One building, or the ground's own load, and how it enters the sum.
struct Part {
  model::BuildingLoads loads;
  model::HourlySeries to_ground;
  double growth = 0;   ///< from one run-year to the next
  int times = 1;       ///< equal ones
  long first_day = 0;  ///< of the run; nothing before it

  bool is_plain() const { return growth == 0 && times == 1 && first_day == 0; }
};

void check_columns_differ(const Section& section) {
  const std::vector<const char*> leaves{"heating", "hot_water", "cooling"};
  for (std::size_t i = 0; i < leaves.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!section.has(leaves[i]) || !section.has(leaves[j]) || section.text(leaves[i]) != section.text(leaves[j]))
        continue;
      section.where(leaves[i]).refuse(
          fmt::format("{} is the column of {} already", quote(section.text(leaves[i])), leaves[j]));
    }
  }
}

HourlyRows rows_of(const Section& section, const Csv& csv, Context& context) {
  const auto first_row = section.has("first_row") ? std::optional(section.date("first_row")) : std::nullopt;
  HourlyRows rows = hourly_rows(csv, first_row, section.where(first_row ? "first_row" : "file"));
  if (rows.leap_days > 0) {
    context.warn(
        {csv.file, 0, 0},
        fmt::format("29 February is left out ({} in {} years)", rows.leap_days, rows.kept.size() / hours_per_year),
        "every year of a run has 365 days");
  }
  return rows;
}

void read_columns(const Section& section, const Csv& csv, const HourlyRows& rows, Part& part) {
  if (section.has("to_ground")) {
    part.to_ground = hourly_series(csv, rows, section.text("to_ground"), section.where("to_ground"), -HUGE_VAL);
    return;
  }
  check_columns_differ(section);
  const bool direct = section.word("cooling_by") == "fluid";
  model::BuildingLoads& loads = part.loads;
  for (const auto& [leaf, series] : {std::pair{"heating", &loads.heating}, std::pair{"hot_water", &loads.hot_water},
                                     std::pair{"cooling", direct ? &loads.cooling_direct : &loads.cooling}}) {
    if (section.has(leaf)) *series = hourly_series(csv, rows, section.text(leaf), section.where(leaf), 0);
  }
  if (section.has("cooling_by") && !section.has("cooling")) {
    section.where("cooling_by").refuse("there is no cooling: leave it out or give cooling");
  }
}

void read_file_part(const Section& section, Part& part, Context& context) {
  section.forbid("monthly", "cannot stand beside file; give one of them");
  if (section.has("to_ground")) {
    for (const char* leaf : {"heating", "hot_water", "cooling", "cooling_by"}) {
      section.forbid(leaf, "cannot stand beside to_ground, the ground's own load; give one of them");
    }
  } else if (!section.has("heating") && !section.has("hot_water") && !section.has("cooling")) {
    section.where().refuse(
        "no column is named: heating, cooling or to_ground is needed (for example \"heating: heating_kw\")");
  }
  const Csv csv = read_input(section, "file", context);
  read_columns(section, csv, rows_of(section, csv, context), part);
}

void read_monthly_part(const Section& section, Part& part, Context& context) {
  for (const char* leaf : {"heating", "hot_water", "cooling", "to_ground", "first_row"}) {
    section.forbid(leaf, "cannot stand beside monthly: a monthly table's columns have names of their own");
  }
  part.loads = read_monthly(section, context);
}

Part read_part(const Section& section, const model::Run& run, Context& context) {
  Part part;
  if (section.has("file")) {
    read_file_part(section, part, context);
  } else {
    read_monthly_part(section, part, context);
  }
  part.growth = section.quantity("growth");
  part.times = section.whole("times");
  if (section.has("from")) {
    const Date from = section.date("from");
    part.first_day = days_between(run.start, from);
    if (part.first_day < 0) {
      section.where("from").refuse(fmt::format("{} is before the run's start, {}", iso(from), iso(run.start)));
    }
    if (part.first_day >= static_cast<long>(run.years) * days_per_year) {
      const Date end{run.start.year + run.years, run.start.month, run.start.day};
      section.where("from").refuse(fmt::format("{} is after the run's end, {}", iso(from), iso(end)));
    }
  }
  return part;
}

/// Adds a part's series to a sum that has one value for every hour of the run.
void add(const model::HourlySeries& series, const Part& part, const model::Run& run, model::HourlySeries& sum) {
  if (series.values.empty()) return;
  const int first = hour_of_year(run.start);
  const long hours = static_cast<long>(run.years) * hours_per_year;
  sum.first_hour = first;
  sum.values.resize(static_cast<std::size_t>(hours), 0.0);
  double factor = part.times;
  for (long hour = 0; hour < hours; ++hour) {
    if (hour > 0 && hour % hours_per_year == 0) factor *= 1 + part.growth;
    if (hour < part.first_day * 24) continue;
    sum.values[static_cast<std::size_t>(hour)] += factor * series.at(first + hour);
  }
}

model::BuildingLoads sum_of(const std::vector<Part>& parts, const model::Run& run) {
  if (parts.size() == 1 && parts.front().is_plain()) return parts.front().loads;
  model::BuildingLoads sum;
  for (const Part& part : parts) {
    add(part.loads.heating, part, run, sum.heating);
    add(part.loads.hot_water, part, run, sum.hot_water);
    add(part.loads.cooling, part, run, sum.cooling);
    add(part.loads.cooling_direct, part, run, sum.cooling_direct);
  }
  return sum;
}

std::vector<Part> read_buildings(const Section& section, const model::Run& run, Context& context) {
  for (const Key* row : keys_below("loads")) {
    if (row->leaf() != "buildings" && row->leaf() != "peak")
      section.forbid(row->leaf(), "stands inside each of the buildings");
  }
  const Node& list = section.node("buildings");
  if (list.items.empty()) section.where("buildings").refuse("no building is given: at least one is needed");
  std::vector<Part> parts;
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const Section building(list.items[i], "loads", fmt::format("loads.buildings[{}]", i + 1), list.items[i].place);
    building.forbid("buildings", "a building holds no buildings");
    building.forbid("to_ground", "is the ground's own load, not a building's");
    building.forbid("peak", "is that of all buildings together: it stands beside them, under loads");
    building.one_of({"file", "monthly"});
    parts.push_back(read_part(building, run, context));
  }
  return parts;
}

model::Loads read_one(const Section& section, const model::Run& run, Context& context) {
  const Part part = read_part(section, run, context);
  if (!section.has("to_ground")) return sum_of({part}, run);
  if (part.is_plain()) return model::GroundLoads{part.to_ground};
  model::GroundLoads sum;
  add(part.to_ground, part, run, sum.to_ground);
  return sum;
}

}  // namespace

model::Loads read_loads(const Section& root, const model::Run& run, Context& context) {
  const Section section = root.section("loads");
  if (section.has("buildings")) return sum_of(read_buildings(section, run, context), run);
  if (section.has("file") || section.has("monthly")) return read_one(section, run, context);
  for (const char* leaf : {"heating", "hot_water", "cooling", "cooling_by", "first_row"}) {
    section.forbid(leaf, "needs a file of hourly values (for example \"file: loads.csv\")");
  }
  for (const char* leaf : {"growth", "times", "from"}) {
    section.forbid(leaf, "needs a file or a monthly table (for example \"file: loads.csv\")");
  }
  if (!section.has("to_ground")) {
    section.where("file").refuse(
        "missing (for example \"file: loads.csv\", or \"to_ground: 13.5 kW\" for a constant load)");
  }
  return model::ConstantGroundLoad{section.quantity("to_ground")};
}

}  // namespace stillground::config
