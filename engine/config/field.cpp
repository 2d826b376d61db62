#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "engine/base/quote.hpp"
#include "engine/config/layouts.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// Coordinates are local: beyond this they are map coordinates, whose small differences lose digits.
constexpr double farthest = 1e6;
/// A column's range stands here, since the table of keys holds no columns.
constexpr Key weight_range{.path = "flow_weight",
                           .kind = Kind::quantity,
                           .dimension = units::Dimension::fraction,
                           .least = "0.05",
                           .most = "20"};

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

/// When each bore begins or is shut off: a time after the run's start (`start [year]`) or a date (`start`).
class InstantColumn {
 public:
  InstantColumn(const Csv& csv, const model::Run& run, std::string_view name)
      : csv_(csv), run_(run), column_(csv.find(name)) {
    if (column_ && !csv.columns[*column_].unit.empty()) to_si_ = csv.conversion(*column_, units::Dimension::time);
  }

  double seconds(std::size_t row, double otherwise) const {
    if (!column_ || csv_.cell(row, *column_).empty()) return otherwise;
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

/// There is never an hour without any bore at work.
void check_always_one(const std::vector<model::BoreSite>& sites, const Csv& csv, const model::Run& run,
                      const Where& asked) {
  std::vector<double> instants{0};  // when the number at work may fall to none
  for (const model::BoreSite& site : sites) {
    if (site.stop < seconds_per_year * run.years) instants.push_back(site.stop);
  }
  for (const double instant : instants) {
    const auto works = [&](const model::BoreSite& site) { return site.start <= instant && instant < site.stop; };
    if (std::any_of(sites.begin(), sites.end(), works)) continue;
    asked.refuse(instant == 0 ? fmt::format("no bore of {} works at the run's start", csv.file)
                              : fmt::format("no bore of {} works from {} on", csv.file,
                                            iso_hour(run.start, instant / seconds_per_hour)));
  }
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
                       column.name == "start" || column.name == "stop" || column.name == "flow_weight" ||
                       column.name == "name";
    if (!known) {
      Where{column.place, ""}.refuse(fmt::format(
          "unknown column {} (known here: x, y, depth, top, start, stop, flow_weight, name)", quote(column.name)));
    }
  }
  const std::size_t x = csv.need("x", asked), y = csv.need("y", asked);
  const units::Conversion x_to_metre = csv.conversion(x, units::Dimension::length);
  const units::Conversion y_to_metre = csv.conversion(y, units::Dimension::length);
  const OptionalColumn depth(csv, "depth", units::Dimension::length), top(csv, "top", units::Dimension::length);
  const OptionalColumn weight(csv, "flow_weight", units::Dimension::fraction);
  const auto name = csv.find("name");
  const InstantColumn start(csv, run, "start"), stop(csv, run, "stop");
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
    site.start = start.seconds(row, 0);
    site.stop = stop.seconds(row, std::numeric_limits<double>::infinity());
    if (site.stop <= site.start) {
      csv.where(row, csv.need("stop", asked)).refuse("the bore is shut off before it begins to work");
    }
    site.flow_weight = weight.value(csv, row, 1, weight_range);
    if (name) site.name = csv.cell(row, *name);
    positions.sites.push_back(site);
  }
  check_always_one(positions.sites, csv, run, asked);
  check_distances(positions.sites, csv, bore.diameter, context);
  return positions;
}

}  // namespace

model::Layout read_layout(const Section& root, const model::Bore& bore, const model::Run& run, Context& context) {
  const Section field = root.section("field");
  const std::string shape =
      field.one_of({"grid", "staggered", "line", "l_shape", "u_shape", "ring", "fan", "plot", "positions"});
  if (shape == "positions") return read_positions(field, bore, run, context);
  if (shape == "plot") return read_plot(field.section(shape), bore, context);
  return read_shape(shape, field.section(shape), bore, context);
}

}  // namespace stillground::config
