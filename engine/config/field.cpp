#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "engine/base/quote.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

constexpr std::size_t most_bores = 10000;
/// The engine's own limit of a sound model: common practice, no source.
constexpr double least_advised = 3;
/// Coordinates are local: beyond this they are map coordinates, whose small differences lose digits.
constexpr double farthest = 1e6;

void warn_of_close_bores(const Place& place, const std::string& what, double distance, Context& context) {
  if (distance >= least_advised) return;
  context.warn(place, fmt::format("{} {:.3g} m apart: bores so close exchange heat within days", what, distance),
               fmt::format("the model is meant for {:g} m and more", least_advised));
}

model::Grid read_grid(const Section& field, const model::Bore& bore, Context& context) {
  const Section section = field.section("grid");
  model::Grid grid{section.whole("rows"), section.whole("columns"), 0};
  const auto count = static_cast<std::size_t>(grid.rows) * static_cast<std::size_t>(grid.columns);
  if (count > most_bores) {
    section.where("rows").refuse(fmt::format("{} bores are too many (allowed: up to {})", count, most_bores));
  }
  const auto spacing = section.optional_quantity("spacing");
  if (!spacing && count > 1) section.where("spacing").refuse("missing (for example \"spacing: 6 m\")");
  grid.spacing = spacing.value_or(0);
  if (count == 1) return grid;
  if (grid.spacing < bore.diameter) {
    section.where("spacing").refuse(fmt::format(
        "{:.3g} m is less than the bore's diameter of {:.3g} m: bores would overlap", grid.spacing, bore.diameter));
  }
  warn_of_close_bores(section.where("spacing").place, "the bores stand", grid.spacing, context);
  return grid;
}

/// A column of the positions that may be absent or have empty cells.
struct OptionalColumn {
  std::optional<std::size_t> column;
  units::Conversion to_si;

  OptionalColumn(const Csv& csv, std::string_view name, units::Dimension dimension) : column(csv.find(name)) {
    if (column) to_si = csv.conversion(*column, dimension);
  }
  double value(const Csv& csv, std::size_t row, double otherwise, const Key& range) const {
    if (!column || csv.cell(row, *column).empty()) return otherwise;
    const double si = csv.number(row, *column, to_si);
    check_range(si, csv.cell(row, *column), range, csv.where(row, *column));
    return si;
  }
};

/// When each bore begins: a time after the run's start (`start [year]`) or a date (`start`).
class StartColumn {
 public:
  StartColumn(const Csv& csv, const model::Run& run) : csv_(csv), run_(run), column_(csv.find("start")) {
    if (column_ && !csv.columns[*column_].unit.empty()) to_si_ = csv.conversion(*column_, units::Dimension::time);
  }

  double seconds(std::size_t row) const {
    if (!column_ || csv_.cell(row, *column_).empty()) return 0;
    const Where where = csv_.where(row, *column_);
    const double raw =
        to_si_ ? csv_.number(row, *column_, *to_si_) : from_date(std::string(csv_.cell(row, *column_)), where);
    const double value = seconds_per_hour * std::round(raw / seconds_per_hour);
    if (std::abs(value - raw) > 1e-3) where.refuse(quote(csv_.cell(row, *column_)) + " is not a whole number of hours");
    if (value < 0) where.refuse(quote(csv_.cell(row, *column_)) + " is before the run's start");
    if (value >= seconds_per_year * run_.years)
      where.refuse(quote(csv_.cell(row, *column_)) + " is after the run's end");
    return value;
  }

 private:
  double from_date(const std::string& text, const Where& where) const {
    try {
      return static_cast<double>(days_between(run_.start, parse_date(text))) * seconds_per_day;
    } catch (const std::invalid_argument& fault) {  // a fence: the calendar does not know where the text stands
      where.refuse(fmt::format("{}: {}; with a unit in the column's head it is a time after the run's start",
                               quote(text), fault.what()));
    }
  }

  const Csv& csv_;
  const model::Run& run_;
  std::optional<std::size_t> column_;
  std::optional<units::Conversion> to_si_;
};

struct Pair {
  std::size_t a = 0, b = 0;
  double distance = HUGE_VAL;
};

/// The nearest two, found along x so that large fields stay cheap.
Pair nearest_pair(const std::vector<model::BoreSite>& sites) {
  std::vector<std::size_t> order(sites.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return sites[a].x < sites[b].x; });
  Pair nearest;
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (std::size_t j = i + 1; j < order.size(); ++j) {
      const model::BoreSite &a = sites[order[i]], &b = sites[order[j]];
      if (b.x - a.x > nearest.distance) break;
      const double distance = std::hypot(b.x - a.x, b.y - a.y);
      if (distance < nearest.distance) nearest = {std::min(order[i], order[j]), std::max(order[i], order[j]), distance};
    }
  }
  return nearest;
}

void check_distances(const std::vector<model::BoreSite>& sites, const Csv& csv, double diameter, Context& context) {
  const Pair pair = nearest_pair(sites);
  if (sites.size() < 2) return;
  const Where where{{csv.file, csv.lines[pair.b], 0}, "field.positions"};
  const int other = csv.lines[pair.a];
  if (pair.distance < 1e-6) where.refuse(fmt::format("the bore stands at the same place as the one in line {}", other));
  if (pair.distance < diameter) {
    where.refuse(fmt::format("the bore stands {:.3g} m from the one in line {}, less than its diameter of {:.3g} m",
                             pair.distance, other, diameter));
  }
  warn_of_close_bores(where.place, fmt::format("this bore and the one in line {} stand", other), pair.distance,
                      context);
}

model::Positions read_positions(const Section& field, const model::Bore& bore, const model::Run& run,
                                Context& context) {
  const Csv csv = read_input(field, "positions", context);
  const Where asked = field.where("positions");
  if (csv.rows() > most_bores) {
    asked.refuse(fmt::format("{} bores are too many (allowed: up to {})", csv.rows(), most_bores));
  }
  for (const CsvColumn& column : csv.columns) {
    const bool known = column.name == "x" || column.name == "y" || column.name == "depth" || column.name == "top" ||
                       column.name == "start" || column.name == "name";
    if (!known) {
      Where{column.place, ""}.refuse(
          fmt::format("unknown column {} (known here: x, y, depth, top, start, name)", quote(column.name)));
    }
  }
  const std::size_t x = csv.need("x", asked), y = csv.need("y", asked);
  const units::Conversion x_to_metre = csv.conversion(x, units::Dimension::length);
  const units::Conversion y_to_metre = csv.conversion(y, units::Dimension::length);
  const OptionalColumn depth(csv, "depth", units::Dimension::length), top(csv, "top", units::Dimension::length);
  const StartColumn start(csv, run);
  model::Positions positions;
  for (std::size_t row = 0; row < csv.rows(); ++row) {
    model::BoreSite site;
    site.x = csv.number(row, x, x_to_metre);
    site.y = csv.number(row, y, y_to_metre);
    for (const auto& [value, column] : {std::pair{site.x, x}, std::pair{site.y, y}}) {
      if (std::abs(value) > farthest) {
        csv.where(row, column).refuse(quote(csv.cell(row, column)) + " is out of range (allowed: -1000 km to 1000 km)");
      }
    }
    site.depth = depth.value(csv, row, bore.depth, key("bore.depth"));
    site.top = top.value(csv, row, bore.top, key("bore.top"));
    site.start = start.seconds(row);
    positions.sites.push_back(site);
  }
  const auto works_at_once = [](const model::BoreSite& site) { return site.start == 0; };
  if (std::none_of(positions.sites.begin(), positions.sites.end(), works_at_once)) {
    asked.refuse(fmt::format("no bore of {} works at the run's start", csv.file));
  }
  check_distances(positions.sites, csv, bore.diameter, context);
  return positions;
}

}  // namespace

model::Layout read_layout(const Section& root, const model::Bore& bore, const model::Run& run, Context& context) {
  const Section field = root.section("field");
  if (field.one_of({"grid", "positions"}) == "grid") return read_grid(field, bore, context);
  return read_positions(field, bore, run, context);
}

}  // namespace stillground::config
