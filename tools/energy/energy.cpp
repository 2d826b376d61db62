#include "tools/energy/energy.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "engine/base/calendar.hpp"

namespace stillground::energy {

namespace {

double over(double heat, double electricity) {
  return electricity > 0 ? heat / electricity : std::numeric_limits<double>::quiet_NaN();
}

const record::CopCurveRow* curve_of(const std::vector<record::CopCurveRow>& curves, const std::string& duty) {
  const auto found = std::find_if(curves.begin(), curves.end(), [&](const auto& curve) { return curve.duty == duty; });
  return found == curves.end() ? nullptr : &*found;
}

/// Whether a duty [W] needs its curve where that has no points, as the run itself counts it.
bool is_held(double duty, const record::CopCurveRow* curve, double eft) {
  return duty > 0 && curve != nullptr && (eft < curve->eft.front() || eft > curve->eft.back());
}

}  // namespace

double Sum::performance_heating() const {
  return over(heating, power - power_cooling);
}

double Sum::performance_cooling() const {
  return over(cooling - cooling_direct, power_cooling);
}

double Sum::performance() const {
  return over(heating + cooling, power);
}

double Sum::direct_share() const {
  return over(cooling_direct, cooling);
}

Sum sum_of(std::span<const record::Hour> hours, const std::vector<record::CopCurveRow>& curves) {
  Sum sum;
  sum.curves_known = !curves.empty();
  const auto *heating = curve_of(curves, "heating"), *hot_water = curve_of(curves, "hot_water"),
             *cooling = curve_of(curves, "cooling");
  for (const record::Hour& hour : hours) {
    sum.heating += hour.heating;
    sum.hot_water += hour.hot_water;
    sum.cooling += hour.cooling;
    sum.cooling_direct += hour.cooling_direct;
    sum.power += hour.power;
    sum.power_hot_water += hour.power_hot_water;
    sum.power_cooling += hour.power_cooling;
    (hour.heat_to_ground < 0 ? sum.from_ground : sum.into_ground) += std::abs(hour.heat_to_ground);
    if (is_held(hour.heating - hour.hot_water, heating, hour.eft)) ++sum.heating_held;
    if (is_held(hour.hot_water, hot_water, hour.eft)) ++sum.hot_water_held;
    if (is_held(hour.cooling - hour.cooling_direct, cooling, hour.eft)) ++sum.cooling_held;
  }
  for (double* mean : {&sum.heating, &sum.hot_water, &sum.cooling, &sum.cooling_direct, &sum.power,
                       &sum.power_hot_water, &sum.power_cooling, &sum.from_ground, &sum.into_ground}) {
    *mean *= seconds_per_hour;
  }
  return sum;
}

Sum operator+(const Sum& a, const Sum& b) {
  return {.heating = a.heating + b.heating,
          .hot_water = a.hot_water + b.hot_water,
          .cooling = a.cooling + b.cooling,
          .cooling_direct = a.cooling_direct + b.cooling_direct,
          .power = a.power + b.power,
          .power_hot_water = a.power_hot_water + b.power_hot_water,
          .power_cooling = a.power_cooling + b.power_cooling,
          .from_ground = a.from_ground + b.from_ground,
          .into_ground = a.into_ground + b.into_ground,
          .heating_held = a.heating_held + b.heating_held,
          .hot_water_held = a.hot_water_held + b.hot_water_held,
          .cooling_held = a.cooling_held + b.cooling_held,
          .curves_known = a.curves_known && b.curves_known};
}

}  // namespace stillground::energy
