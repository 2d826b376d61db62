#include <algorithm>

#include "engine/record/write/contents.hpp"

namespace stillground::record {

HourColumns::HourColumns(ResultWriter& writer, const Header& header)
    : time_(writer, schema::time), bounds_(writer, schema::time_bounds) {
  const auto mean = [&](const schema::Variable& variable, double Hour::*member) {
    means_.emplace_back(Column<double>(writer, variable), member);
  };
  mean(schema::eft, &Hour::eft);
  mean(schema::lft, &Hour::lft);
  mean(schema::flow, &Hour::flow);
  mean(schema::heat_to_ground, &Hour::heat_to_ground);
  if (!header.has_heat_pump) return;
  mean(schema::heating, &Hour::heating);
  mean(schema::cooling, &Hour::cooling);
  mean(schema::power, &Hour::power);
  mean(schema::hot_water, &Hour::hot_water);
  mean(schema::cooling_direct, &Hour::cooling_direct);
  mean(schema::power_hot_water, &Hour::power_hot_water);
  mean(schema::power_cooling, &Hour::power_cooling);
}

void HourColumns::add(std::span<const Hour> hours) {
  values_.resize(hours.size());
  for (auto& [column, member] : means_) {
    std::transform(hours.begin(), hours.end(), values_.begin(), [&](const Hour& hour) { return hour.*member; });
    column.add(values_);
  }
  for (double& end : values_) end = static_cast<double>(++hours_);
  time_.add(values_);
  std::vector<double>& bounds = values_;
  bounds.resize(2 * hours.size());
  for (std::size_t i = hours.size(); i-- > 0;) {
    bounds[2 * i + 1] = bounds[i];
    bounds[2 * i] = bounds[i] - 1;
  }
  bounds_.add(bounds);
}

void HourColumns::close() {
  time_.close();
  bounds_.close();
  for (auto& [column, member] : means_) column.close();
}

BalanceColumns::BalanceColumns(ResultWriter& writer) : year_(writer, schema::year) {
  const auto sum = [&](const schema::Variable& variable, double YearBalance::*member) {
    sums_.emplace_back(Column<double>(writer, variable), member);
  };
  sum(schema::balance_in, &YearBalance::in);
  sum(schema::balance_stored, &YearBalance::stored);
  sum(schema::balance_surface, &YearBalance::surface);
  sum(schema::balance_deep, &YearBalance::deep);
  sum(schema::balance_residual, &YearBalance::residual);
}

void BalanceColumns::add(const YearBalance& balance) {
  ++years_;
  year_.add(std::span<const std::int32_t>(&years_, 1));
  for (auto& [column, member] : sums_) column.add(std::span(&(balance.*member), 1));
}

void BalanceColumns::close() {
  year_.close();
  for (auto& [column, member] : sums_) column.close();
}

}  // namespace stillground::record
