#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/base/calendar.hpp"

namespace stillground::present {

struct Tick {
  double at = 0;
  std::string label;
  std::string below = {};  ///< a second line under it
};

/// From the left (or the bottom) to the right (or the top).
struct Axis {
  std::string label;  ///< what and in which units: "EFT [°C]"
  double from = 0;
  double to = 1;
  std::vector<Tick> ticks;  ///< within [from, to]
};

/// The range of the finite values added to it.
class Range {
 public:
  void add(double value);
  void add(const std::vector<double>& values);
  bool empty() const { return low_ > high_; }
  double low() const { return low_; }    ///< meaningless while empty
  double high() const { return high_; }  ///< meaningless while empty
  double span() const { return empty() ? 0 : high_ - low_; }

 private:
  double low_ = 1;
  double high_ = 0;
};

/// An axis of round numbers that holds the range, its ends on ticks, about `intervals` steps of 1, 2 or 5 times a power
/// of ten (nice numbers: Heckbert, Graphics Gems, 1990). A range without width gets one unit about it.
Axis round_axis(const std::string& label, const Range& range, int intervals);

/// An axis of powers of ten for a range of decimal logarithms, its ends on ticks; at most about ten of them are named.
Axis decade_axis(const std::string& label, const Range& logarithms);

/// The range with `share` of its span more at either end, so that what lies at its ends is not drawn on the frame.
Range with_room(const Range& range, double share);

/// Run-years 1 to `years`, each from half a year before its number to half a year after it; year 1, the last one and
/// round ones are named. With the day on which the first one starts, the calendar years stand below: "2027/28", or
/// "2027" for a start on 1 January; no two of them meet on an axis 570 px wide with text of 17 px.
Axis run_year_axis(int years, const std::optional<Date>& start = {});

/// "2027/28", or "2027" if the run-years start on 1 January: what run-year n (from 1) of a run that starts on `start`
/// is in the calendar.
std::string calendar_years(const Date& start, int run_year);

}  // namespace stillground::present
