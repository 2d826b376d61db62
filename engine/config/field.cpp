#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "engine/base/quote.hpp"
#include "engine/config/coordinates.hpp"
#include "engine/config/instants.hpp"
#include "engine/config/layouts.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// Columns that a table of positions may have.
constexpr std::array known_columns = {"x", "y", "depth", "top", "start", "stop", "flow_weight", "name", "number"};
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
    where.refuse(fmt::format("the bore stands {} from the one in line {}, less than its diameter of {}",
                             context.length(pair.distance), other, context.length(diameter)));
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

void check_columns(const Csv& csv) {
  for (const CsvColumn& column : csv.columns) {
    if (std::find(known_columns.begin(), known_columns.end(), column.name) != known_columns.end()) continue;
    Where{column.place, ""}.refuse(
        fmt::format("unknown column {} (known here: {})", quote(column.name), fmt::join(known_columns, ", ")));
  }
}

/// Numbers are not read: bores are numbered in the order of the rows, on plans and in messages.
void warn_of_other_numbers(const Csv& csv, Context& context) {
  const auto number = csv.find("number");
  for (std::size_t row = 0; number && row < csv.rows(); ++row) {
    const std::string own = fmt::format("{}", row + 1);
    if (csv.cell(row, *number).empty() || csv.cell(row, *number) == own) continue;
    context.warn(csv.where(row, *number).place,
                 fmt::format("number {} is not read: bores are numbered in the order of the rows, and this one is {}; "
                             "a column \"name\" keeps numbers of one's own",
                             quote(csv.cell(row, *number)), own));
    return;
  }
}

model::Positions read_positions(const Section& field, const model::Bore& bore, const model::Run& run,
                                Context& context) {
  const Csv csv = read_input(field, "positions", context);
  const Where asked = field.where("positions");
  if (csv.rows() > most_bores) {
    asked.refuse(fmt::format("{} bores are too many (allowed: up to {})", csv.rows(), most_bores));
  }
  check_columns(csv);
  const std::vector<model::PlanPoint> points = read_coordinates(csv, asked);
  const OptionalColumn depth(csv, "depth", units::Dimension::length), top(csv, "top", units::Dimension::length);
  const OptionalColumn weight(csv, "flow_weight", units::Dimension::fraction);
  const auto name = csv.find("name");
  const InstantColumn start(csv, run, "start"), stop(csv, run, "stop");
  model::Positions positions;
  for (std::size_t row = 0; row < csv.rows(); ++row) {
    model::BoreSite site;
    site.x = points[row].x;
    site.y = points[row].y;
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
  warn_of_other_numbers(csv, context);
  if (const auto plot = field.optional_section("plot")) positions.land = read_land_of_positions(*plot, context);
  return positions;
}

}  // namespace

model::Layout read_layout(const Section& root, const model::Bore& bore, const model::Run& run, Context& context) {
  const Section field = root.section("field");
  // A plot beside positions is the land on which they stand.
  const std::string shape =
      field.has("positions")
          ? field.one_of({"grid", "staggered", "line", "l_shape", "u_shape", "ring", "fan", "positions"})
          : field.one_of({"grid", "staggered", "line", "l_shape", "u_shape", "ring", "fan", "plot", "positions"});
  if (shape == "positions") return read_positions(field, bore, run, context);
  if (shape == "plot") return read_plot(field.section(shape), bore, context);
  return read_shape(shape, field.section(shape), bore, context);
}

}  // namespace stillground::config
