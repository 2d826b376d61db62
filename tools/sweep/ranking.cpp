#include "tools/sweep/ranking.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <tuple>

namespace stillground::sweep {

namespace {

constexpr double most = std::numeric_limits<double>::infinity();

double or_most(double value) {
  return std::isnan(value) ? most : value;
}

double ranked_by(const Plan& plan, const Record& record) {
  switch (plan.rank) {
    case Rank::length:
      return record.decision.length;
    case Rank::cost:
      return cost_of(plan, record).value_or(most);
    case Rank::power:
      return or_most(record.decision.power);
  }
  return most;
}

using Order = std::tuple<int, double, double>;

Order order_of(const Plan& plan, const Standing& standing) {
  const Record* record = standing.shown();
  if (record == nullptr || !record->failed.empty()) return {2, 0, 0};
  const double short_of = or_most(-record->decision.margin);
  if (!record->kept) return {1, short_of, 0};
  return {0, ranked_by(plan, *record), short_of};
}

}  // namespace

std::optional<double> cost_of(const Plan& plan, const Record& record) {
  if (!plan.prices || !record.failed.empty()) return std::nullopt;
  const Prices& prices = *plan.prices;
  const points::Amounts& amounts = record.amounts;
  return prices.drilling * record.decision.length + prices.bore * amounts.bores + prices.grout * amounts.grout +
         prices.pipe * amounts.pipe + prices.trench * amounts.trench;
}

std::vector<std::size_t> ranked(const Plan& plan, const State& state) {
  std::vector<Order> orders;
  for (const Standing& standing : state) orders.push_back(order_of(plan, standing));
  std::vector<std::size_t> numbers(state.size());
  std::iota(numbers.begin(), numbers.end(), std::size_t{1});
  std::stable_sort(numbers.begin(), numbers.end(),
                   [&](std::size_t a, std::size_t b) { return orders[a - 1] < orders[b - 1]; });
  return numbers;
}

double spent(const Plan& plan, const Record& record) {
  if (!record.failed.empty()) return std::numeric_limits<double>::quiet_NaN();
  return cost_of(plan, record).value_or(record.decision.length);
}

std::vector<std::size_t> unbeaten(const Plan& plan, const State& state) {
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < state.size(); ++i) {
    const Record* record = state[i].shown();
    if (record != nullptr && record->failed.empty() && !std::isnan(record->decision.margin)) numbers.push_back(i + 1);
  }
  const auto margin = [&](std::size_t number) { return state[number - 1].shown()->decision.margin; };
  const auto cost = [&](std::size_t number) { return spent(plan, *state[number - 1].shown()); };
  std::stable_sort(numbers.begin(), numbers.end(), [&](std::size_t a, std::size_t b) {
    return std::tuple(cost(a), -margin(a)) < std::tuple(cost(b), -margin(b));
  });
  double best = -most;
  std::erase_if(numbers, [&](std::size_t number) {
    if (margin(number) <= best) return true;
    best = margin(number);
    return false;
  });
  return numbers;
}

}  // namespace stillground::sweep
