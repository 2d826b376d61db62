#include "engine/transit/minute_extremes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>
#include <utility>

#include "engine/transit/hour_march.hpp"

namespace stillground::transit {

namespace {

constexpr int most_in_a_year = 4;  // hours marched for one side of one run-year
constexpr int most_in_all = 80;
constexpr double alike = 0.15;  // of the load: what hours of equal kind may differ by
constexpr double steady_part =
    0.1;  // of the load counts as its rise where it does not rise: the ground goes on cooling

/// The least is searched as the greatest of the EFT with its sign changed.
enum class Side { least, most };
constexpr double sign(Side side) {
  return side == Side::least ? -1 : 1;
}

/// By how much an hour's minutes go beyond its mean [K].
struct Excess {
  double least = 0, most = 0;
  double of(Side side) const { return side == Side::least ? least : most; }
};

class Search {
 public:
  Search(const assembly::Assembly& assembly, std::span<const record::Hour> hours)
      : hours_(hours), march_(assembly, hours) {}

  record::MinuteExtremes year(long first) {
    record::MinuteExtremes found;
    std::tie(found.eft_least, found.hour_least) = extreme(first, Side::least);
    std::tie(found.eft_most, found.hour_most) = extreme(first, Side::most);
    return found;
  }

 private:
  const record::Hour& at(long hour) const { return hours_[static_cast<std::size_t>(hour)]; }
  bool flows(long hour) const { return hour >= 0 && at(hour).flow > 0; }
  bool restarts(long hour) const { return !flows(hour - 1); }

  /// What the hour's heat adds to the side [W], >= 0.
  double heat(long hour, Side side) const { return std::max(0.0, sign(side) * at(hour).heat_to_ground); }

  /// What an hour's excess goes with: after standing its load, else the rise of it.
  double weight(long hour, Side side) const {
    const double now = heat(hour, side);
    if (restarts(hour)) return now;
    return std::max(0.0, now - heat(hour - 1, side)) + steady_part * now;
  }

  const Excess* like(long hour, double& scale) const {
    const auto found = marched_.find(hour % hours_per_year);
    if (found == marched_.end()) return nullptr;
    for (const auto& [other, excess] : found->second) {
      const double now = at(hour).heat_to_ground, then = at(other).heat_to_ground;
      scale = other == hour ? 1 : now / then;
      if (other == hour || (std::abs(scale - 1) < alike && restarts(hour) == restarts(other))) return &excess;
    }
    return nullptr;
  }

  /// EFT, sign changed for the least, that a minute of the hour may reach.
  double reach(long hour, Side side) const {
    double scale = 1;
    const double mean = sign(side) * at(hour).eft;
    if (const Excess* excess = like(hour, scale)) return mean + scale * excess->of(side);
    const double by_load = mean + rate_.at(index(hour, side)) * weight(hour, side);
    if (hour == 0 || !restarts(hour)) return by_load;
    return std::max(by_load, sign(side) * at(hour - 1).eft);  // what stands at the field's end
  }

  std::size_t index(long hour, Side side) const { return (side == Side::least ? 0 : 2) + (restarts(hour) ? 1 : 0); }

  void march(long hour) {
    Excess excess;
    for (const auto& course : march_.courses(hour)) {
      const auto [least, most] = std::minmax_element(course.begin(), course.end());
      excess.least = std::max(excess.least, at(hour).eft - *least);
      excess.most = std::max(excess.most, *most - at(hour).eft);
    }
    for (const Side side : {Side::least, Side::most}) {
      const double w = weight(hour, side);
      double& rate = rate_.at(index(hour, side));
      if (w > 0) rate = std::max(rate, excess.of(side) / w);
    }
    marched_[hour % hours_per_year].emplace_back(hour, excess);
    ++count_;
  }

  /// The hour of the year with the farthest reach, of all or of one kind; -1: none.
  long farthest(long first, Side side, auto&& counts) const {
    long best = -1;
    double most = 0;
    for (long hour = first; hour < first + hours_per_year; ++hour) {
      if (!flows(hour) || !counts(hour)) continue;
      const double now = reach(hour, side);
      if (best < 0 || now > most) best = hour, most = now;
    }
    return best;
  }

  std::pair<double, long> extreme(long first, Side side) {
    const auto any = [](long) { return true; };
    double scale = 1;
    if (first == 0) {  // one of each kind, so that their rates are known
      for (const bool restart : {true, false}) {
        const long hour = farthest(first, side, [&](long h) { return restarts(h) == restart; });
        if (hour >= 0 && !like(hour, scale)) march(hour);
      }
    }
    for (int n = 0; n < most_in_a_year && count_ < most_in_all; ++n) {
      const long hour = farthest(first, side, any);
      if (hour < 0 || like(hour, scale)) break;
      march(hour);
    }
    long hour = farthest(first, side, [&](long h) { return like(h, scale) != nullptr; });
    if (hour < 0) hour = farthest(first, side, any);
    if (hour < 0) return {std::numeric_limits<double>::quiet_NaN(), -1};
    const long mean = farthest_mean(first, side);
    const double by_mean = sign(side) * at(mean).eft;
    if (by_mean > reach(hour, side)) return {at(mean).eft, mean};
    return {sign(side) * reach(hour, side), hour};
  }

  long farthest_mean(long first, Side side) const {
    long best = -1;
    for (long hour = first; hour < first + hours_per_year; ++hour) {
      if (flows(hour) && (best < 0 || sign(side) * (at(hour).eft - at(best).eft) > 0)) best = hour;
    }
    return best;
  }

  std::span<const record::Hour> hours_;
  HourMarch march_;
  std::map<long, std::vector<std::pair<long, Excess>>> marched_;  // [hour of the year]
  std::array<double, 4> rate_{};                                  // [side, restart or not]: largest excess seen [K/W]
  int count_ = 0;
};

}  // namespace

std::vector<record::MinuteExtremes> minute_extremes(const assembly::Assembly& assembly,
                                                    std::span<const record::Hour> hours) {
  Search search(assembly, hours);
  std::vector<record::MinuteExtremes> years;
  for (long first = 0; first + hours_per_year <= static_cast<long>(hours.size()); first += hours_per_year) {
    years.push_back(search.year(first));
  }
  return years;
}

}  // namespace stillground::transit
