#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/record/read/source.hpp"

namespace stillground::record::read {

namespace {

template <class Row>
void fill(const Source& source, const schema::Variable& variable, std::vector<Row>& rows, double Row::*member) {
  const std::vector<double> values = source.all<double>(variable);
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].*member = values[i];
}

/// Of a variable that older files lack: not a number then.
template <class Row>
void fill_newer(const Source& source, const schema::Variable& variable, std::vector<Row>& rows, double Row::*member) {
  if (source.has(variable)) return fill(source, variable, rows, member);
  for (Row& row : rows) row.*member = std::numeric_limits<double>::quiet_NaN();
}

/// As many rows as the run's years ask for, if the dimension agrees.
template <class Row>
std::vector<Row> rows_of(const Source& source, schema::Dim dim, const Header& header, int rows_a_year) {
  const std::size_t length = source.length(dim);
  if (header.years < 1 || length != static_cast<std::size_t>(header.years) * static_cast<std::size_t>(rows_a_year)) {
    throw Mismatch(fmt::format("{} values along {} for {} years", length, schema::name(dim), header.years));
  }
  return std::vector<Row>(length);
}

}  // namespace

std::vector<Hour> read_hours(const Source& source, const Header& header) {
  auto hours = rows_of<Hour>(source, schema::Dim::time, header, hours_per_year);
  fill(source, schema::eft, hours, &Hour::eft);
  fill(source, schema::lft, hours, &Hour::lft);
  fill(source, schema::flow, hours, &Hour::flow);
  fill(source, schema::heat_to_ground, hours, &Hour::heat_to_ground);
  if (!header.has_heat_pump) return hours;
  fill(source, schema::heating, hours, &Hour::heating);
  fill(source, schema::cooling, hours, &Hour::cooling);
  fill(source, schema::power, hours, &Hour::power);
  fill_newer(source, schema::hot_water, hours, &Hour::hot_water);
  fill_newer(source, schema::cooling_direct, hours, &Hour::cooling_direct);
  fill_newer(source, schema::power_hot_water, hours, &Hour::power_hot_water);
  fill_newer(source, schema::power_cooling, hours, &Hour::power_cooling);
  return hours;
}

std::vector<YearBalance> read_balances(const Source& source, const Header& header) {
  if (header.method == "screening") return {};
  auto balances = rows_of<YearBalance>(source, schema::Dim::year, header, 1);
  fill(source, schema::balance_in, balances, &YearBalance::in);
  fill(source, schema::balance_stored, balances, &YearBalance::stored);
  fill(source, schema::balance_surface, balances, &YearBalance::surface);
  fill(source, schema::balance_deep, balances, &YearBalance::deep);
  fill(source, schema::balance_residual, balances, &YearBalance::residual);
  return balances;
}

std::vector<MinuteExtremes> read_minutes(const Source& source, const Header& header) {
  if (!source.has(schema::eft_minute_min)) return {};
  auto years = rows_of<MinuteExtremes>(source, schema::Dim::year, header, 1);
  fill(source, schema::eft_minute_min, years, &MinuteExtremes::eft_least);
  fill(source, schema::eft_minute_max, years, &MinuteExtremes::eft_most);
  const auto hours = [&](const schema::Variable& variable, long MinuteExtremes::*member) {
    const std::vector<double> ends = source.all<double>(variable);  // [s]
    for (std::size_t i = 0; i < years.size(); ++i) {
      if (std::isnan(ends[i])) continue;
      const double end = ends[i] / seconds_per_hour;
      if (!(end >= 1 && end <= static_cast<double>(header.years) * hours_per_year)) {
        throw Mismatch(fmt::format("{} names no hour of the run", variable.name));
      }
      years[i].*member = std::lround(end) - 1;
    }
  };
  hours(schema::eft_minute_min_time, &MinuteExtremes::hour_least);
  hours(schema::eft_minute_max_time, &MinuteExtremes::hour_most);
  return years;
}

std::vector<double> read_snapshot_times(const Source& source) {
  if (!source.has(schema::snapshot)) return {};
  std::vector<double> times = source.all<double>(schema::snapshot);
  if (!std::is_sorted(times.begin(), times.end())) throw Mismatch("the snapshots' instants do not rise");
  return times;
}

Snapshot read_snapshot(const Source& source, double time, std::size_t s) {
  Snapshot snapshot;
  snapshot.time = time;
  snapshot.rise = source.row<float>(schema::ground_rise, s);
  snapshot.undisturbed = source.row<double>(schema::undisturbed, s);
  snapshot.wall_temperature = source.row<double>(schema::wall_temperature, s);
  snapshot.fluid_down = source.row<double>(schema::fluid_down, s);
  snapshot.fluid_up = source.row<double>(schema::fluid_up, s);
  snapshot.grout = source.row<double>(schema::grout_temperature, s);
  if (source.has(schema::fluid_heat)) snapshot.fluid_heat = source.row<double>(schema::fluid_heat, s);
  return snapshot;
}

std::vector<float> weighted_rise(const Source& source, const std::vector<SnapshotWeight>& weights) {
  std::vector<double> sum;
  for (const SnapshotWeight& part : weights) {
    const std::vector<float> rise = source.row<float>(schema::ground_rise, part.snapshot);
    sum.resize(rise.size(), 0);
    for (std::size_t i = 0; i < rise.size(); ++i) sum[i] += part.weight * static_cast<double>(rise[i]);
  }
  std::vector<float> mean(sum.size());
  std::transform(sum.begin(), sum.end(), mean.begin(), [](double value) { return static_cast<float>(value); });
  return mean;
}

}  // namespace stillground::record::read
