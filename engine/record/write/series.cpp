#include <algorithm>

#include "engine/record/write/contents.hpp"

namespace stillground::record {

namespace {

template <class Row>
void put_column(Draft& draft, const schema::Variable& variable, const std::vector<Row>& rows, double Row::*member) {
  const double offset = variable.unit == "degC" ? schema::zero_celsius : 0;
  std::vector<double> values(rows.size());
  std::transform(rows.begin(), rows.end(), values.begin(), [&](const Row& row) { return row.*member - offset; });
  draft.put(variable, values);
}

void put_time(Draft& draft, std::size_t hours) {
  std::vector<double> ends(hours), bounds;
  bounds.reserve(2 * hours);
  for (std::size_t i = 0; i < hours; ++i) {
    ends[i] = static_cast<double>(i + 1);
    bounds.insert(bounds.end(), {ends[i] - 1, ends[i]});
  }
  draft.put(schema::time, ends);
  draft.put(schema::time_bounds, bounds);
}

}  // namespace

void put_hours(Draft& draft, const Header& header, const std::vector<Hour>& hours) {
  put_time(draft, hours.size());
  put_column(draft, schema::eft, hours, &Hour::eft);
  put_column(draft, schema::lft, hours, &Hour::lft);
  put_column(draft, schema::flow, hours, &Hour::flow);
  put_column(draft, schema::heat_to_ground, hours, &Hour::heat_to_ground);
  if (!header.has_heat_pump) return;
  put_column(draft, schema::heating, hours, &Hour::heating);
  put_column(draft, schema::cooling, hours, &Hour::cooling);
  put_column(draft, schema::power, hours, &Hour::power);
}

void put_balances(Draft& draft, const std::vector<YearBalance>& balances) {
  std::vector<std::int32_t> years;
  for (const YearBalance& balance : balances)
    years.push_back(static_cast<std::int32_t>(&balance - balances.data()) + 1);
  draft.put(schema::year, years);
  put_column(draft, schema::balance_in, balances, &YearBalance::in);
  put_column(draft, schema::balance_stored, balances, &YearBalance::stored);
  put_column(draft, schema::balance_surface, balances, &YearBalance::surface);
  put_column(draft, schema::balance_deep, balances, &YearBalance::deep);
  put_column(draft, schema::balance_residual, balances, &YearBalance::residual);
}

}  // namespace stillground::record
