#include "engine/loop/closure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/base/errors.hpp"

namespace stillground::loop {

namespace {

/// Adds what a duty takes out of the ground through its curve.
void take(double heat, const std::optional<CopCurve>& curve, double eft, Exchange& result) {
  if (heat == 0) return;
  const auto [cop, slope] = curve->look(eft);
  result.power += heat / cop;
  result.to_ground -= heat * (1 - 1 / cop);
  result.slope -= heat * slope / (cop * cop);
}

}  // namespace

Exchange exchange(const Demand& demand, const HeatPumps& pumps, double eft) {
  Exchange result{demand.to_ground + demand.cooling_direct, 0, 0};
  if (demand.cooling != 0) {
    const auto [cop, slope] = pumps.cooling->look(eft);
    result.power += demand.cooling / cop;
    result.to_ground += demand.cooling * (1 + 1 / cop);
    result.slope -= demand.cooling * slope / (cop * cop);
  }
  take(demand.heating, pumps.heating, eft, result);
  take(demand.hot_water, pumps.hot_water, eft, result);
  return result;
}

OperatingPoint operating_point(const FieldOutlet& field, const Demand& demand, const HeatPumps& pumps,
                               double near_enough) {
  const auto excess = [&](double eft, const Exchange& e) {
    return (1 - field.gain) * eft - field.gain * e.to_ground / field.heat_rate - field.offset;
  };
  double eft = field.offset / (1 - field.gain);  // with no heat at all
  Exchange e = exchange(demand, pumps, eft);
  if (!demand.through_pump()) {
    eft = (field.offset + field.gain * e.to_ground / field.heat_rate) / (1 - field.gain);
    return {eft, eft + e.to_ground / field.heat_rate, e.to_ground, 0};
  }
  double low = -1e6, high = 1e6;  // [K]; narrowed by every sign met
  for (int i = 0; i < 100; ++i) {
    const double residual = excess(eft, e);
    (residual > 0 ? high : low) = eft;
    double next = eft - residual / (1 - field.gain - field.gain * e.slope / field.heat_rate);
    // Newton on pieces of 1/COP converges quadratically: what is left below round-off is the root. Judged before the
    // bracket has its say, since a move of nothing never leaves the bracket's end.
    const double round_off = 4e-16 * (std::abs(eft) + std::abs(field.offset));
    if (std::abs(residual) <= round_off || std::abs(next - eft) <= 4e-16 * std::abs(eft)) {
      return {eft, eft + e.to_ground / field.heat_rate, e.to_ground, e.power};
    }
    if (!(next > low && next < high)) next = (low + high) / 2;
    const double step = std::abs(next - eft);
    eft = next;
    e = exchange(demand, pumps, eft);
    if (step <= near_enough || high - low <= 1e-13 * std::abs(eft))
      return {eft, eft + e.to_ground / field.heat_rate, e.to_ground, e.power};
  }
  throw NumericsError(fmt::format("fluid temperature and heat pump do not meet (last EFT {} K)", eft));
}

double steepest_rise(const HeatPumps& pumps, double cooling_peak) {
  if (!pumps.cooling) return 0;
  double steepest = 0;
  const auto& points = pumps.cooling->points();
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double slope = pumps.cooling->slope(points[i].eft);
    const double cop = std::min(points[i].cop, points[i + 1].cop);  // 1/COP^2 is largest at the lower end
    steepest = std::max(steepest, -cooling_peak * slope / (cop * cop));
  }
  return steepest;
}

}  // namespace stillground::loop
