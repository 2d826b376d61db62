#include <fmt/format.h>

#include <cmath>

#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// The step in s; it divides an hour exactly, whatever unit it was given in.
double read_step(const Section& run) {
  const double step = run.quantity("step");
  const double parts = std::round(seconds_per_hour / step);
  if (std::abs(parts * step - seconds_per_hour) > 1e-6) {
    run.where("step").refuse(
        fmt::format("{:g} s does not divide one hour (allowed: 60 min, 30 min, 20 min, 15 min, ...)", step));
  }
  return seconds_per_hour / parts;
}

double read_refresh(const Section& run) {
  const double refresh = run.quantity("refresh");
  const double hours = std::round(refresh / seconds_per_hour);
  if (std::abs(hours * seconds_per_hour - refresh) > 1e-6) {
    run.where("refresh").refuse(
        fmt::format("{:g} h is not a whole number of hours (for example 1 day or 6 h)", refresh / seconds_per_hour));
  }
  return hours * seconds_per_hour;
}

model::Run::Groups read_groups(const Section& run) {
  const std::string word = run.word("groups");
  if (word == "none") return model::Run::Groups::none;
  return word == "merged" ? model::Run::Groups::merged : model::Run::Groups::symmetry;
}

model::GridChoice read_grid_choice(const Section& run) {
  model::GridChoice grid;
  if (!run.has("grid")) return grid;
  if (run.node("grid").kind != Node::Kind::map) {
    grid.level = run.word("grid") == "fine" ? model::GridChoice::Level::fine : model::GridChoice::Level::normal;
    return grid;
  }
  const Section given = run.section("grid");
  if (given.has("radial_cells")) grid.radial_cells = given.whole("radial_cells");
  if (given.has("growth")) grid.growth = given.number("growth");
  grid.end_cell = given.optional_quantity("end_cell").value_or(0);
  grid.largest_cell = given.optional_quantity("largest_cell").value_or(0);
  grid.outer_radius = given.optional_quantity("outer_radius").value_or(0);
  grid.bottom_margin = given.optional_quantity("bottom_margin").value_or(0);
  if (grid.end_cell > 0 && grid.largest_cell > 0 && grid.largest_cell < grid.end_cell) {
    given.where("largest_cell")
        .refuse(fmt::format("{:g} m is smaller than end_cell, {:g} m", grid.largest_cell, grid.end_cell));
  }
  return grid;
}

model::Limit read_limit(const Section& limits, const std::string& name) {
  model::Limit limit;
  limit.name = name;
  limit.side = name.ends_with("_min") ? model::Limit::Side::least : model::Limit::Side::most;
  limit.quantity = name.starts_with("eft")   ? model::Limit::Quantity::eft
                   : name.starts_with("lft") ? model::Limit::Quantity::lft
                                             : model::Limit::Quantity::mean_fluid;
  const Node& given = limits.node(name);
  if (given.kind == Node::Kind::map) {
    const Section section = limits.section(name);
    limit.value = section.quantity("value");
    const std::string over = section.word("over");
    if (over == "minute" && limit.quantity != model::Limit::Quantity::eft) {
      section.where("over").refuse("minutes are estimated of the EFT alone (allowed here: hour, month)");
    }
    limit.over = over == "minute"  ? model::Limit::Over::minute
                 : over == "month" ? model::Limit::Over::month
                                   : model::Limit::Over::hour;
    return limit;
  }
  const Where where = limits.where(name);
  limit.value = units::to_si(given.text, units::Dimension::temperature, where, examples(limits.row(name)));
  check_range(limit.value, given.text, key("limits.*.value"), where);
  return limit;
}

}  // namespace

model::Run read_run(const Section& root) {
  const Section section = root.section("run");
  model::Run run;
  run.start = section.date("start");
  run.years = section.whole("years");
  run.method = section.word("method") == "screening" ? model::Run::Method::screening : model::Run::Method::march;
  run.step = read_step(section);
  run.refresh = read_refresh(section);
  run.grid = read_grid_choice(section);
  run.groups = read_groups(section);
  run.group_error = section.quantity("group_error");
  run.stepper =
      section.word("stepper") == "reference" ? model::Run::Stepper::reference : model::Run::Stepper::automatic;
  run.clocks = section.word("clocks") == "one" ? model::Run::Clocks::one : model::Run::Clocks::automatic;
  return run;
}

std::vector<model::Limit> read_limits(const Section& root) {
  std::vector<model::Limit> limits;
  const auto section = root.optional_section("limits");
  if (!section) return limits;
  for (const std::string quantity : {"eft", "lft", "mean_fluid"}) {
    const std::string least = quantity + "_min", most = quantity + "_max";
    if (section->has(least)) limits.push_back(read_limit(*section, least));
    if (section->has(most)) limits.push_back(read_limit(*section, most));
    if (section->has(least) && section->has(most) && limits[limits.size() - 2].value >= limits.back().value) {
      section->where(most).refuse(fmt::format("the limit does not lie above {}: nothing would be allowed", least));
    }
  }
  return limits;
}

model::RecordFields read_fields(const Section& root) {
  const auto section = root.optional_section("record");
  const std::string word = section ? section->word("fields") : "monthly";
  if (word == "yearly") return model::RecordFields::yearly;
  return word == "none" ? model::RecordFields::none : model::RecordFields::monthly;
}

}  // namespace stillground::config
