// Source: plug flow along the characteristics; Carslaw & Jaeger (1959), section 13.5 [section from memory]; Stehfest
// (1970) [pages from memory]
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "validation/harness/claim.hpp"
#include "validation/harness/restart_case.hpp"

using namespace stillground;
using validation::Origin;

namespace {

/// Minutes of one hour looked at, of all that were marched.
struct Hour {
  std::vector<double> ours, reference;
  double mean = 0;

  Hour(const validation::RestartMinutes& all, std::size_t n)
      : ours(all.ours.begin() + static_cast<std::ptrdiff_t>(60 * n),
             all.ours.begin() + static_cast<std::ptrdiff_t>(60 * (n + 1))),
        reference(all.reference.begin() + static_cast<std::ptrdiff_t>(60 * n),
                  all.reference.begin() + static_cast<std::ptrdiff_t>(60 * (n + 1))),
        mean(all.hourly[n]) {}

  double worst() const {
    double worst = 0;
    for (std::size_t i = 0; i < ours.size(); ++i) worst = std::max(worst, std::abs(ours[i] - reference[i]));
    return worst;
  }
};

double least_of(const std::vector<double>& values) {
  return *std::min_element(values.begin(), values.end());
}

validation::Curve curve(const std::string& name, const std::vector<double>& values, bool is_reference) {
  validation::Curve drawn{name, {}, is_reference};
  for (std::size_t i = 0; i < values.size(); ++i) {
    drawn.points.emplace_back(static_cast<double>(i) + 0.5, values[i] - 273.15);
  }
  return drawn;
}

/// A peak of ten minutes in an hour of even flow.
void judge_peaks(validation::Check& check) {
  const std::string setup =
      "the single U and the coaxial loop, 50 W/m drawn for 26 h, then an hour with 1.4 times the load for 10 min and "
      "the rest even: the "
      "peak "
      "at the hour's start, so that it comes back by the hour's end, and at its end; the mean EFT of every minute "
      "until "
      "the hour's fluid has come back";
  const std::string reference =
      "plug flow along the characteristics, as for the hours after standing: the peak's heat second by second";
  auto& minutes = check.claim({"inside-the-hour-peak", "the minutes of an hour with a peak are those of plug flow",
                               Origin::computed, reference, setup, "0.3 K: what a limit on minutes is worth"});
  auto& least = check.claim({"inside-the-hour-peak-least", "a peak takes the fluid this far below where the hour began",
                             Origin::computed,
                             reference + "; its least minute less the hour's first, which the peak does not reach",
                             setup, "0.15 K: as after standing"});
  const char* place[] = {"at the start", "back by the end", "at the end"};
  for (const validation::RestartCase& one : validation::restart_cases()) {
    if (one.name == "single U, poor grout") continue;
    const auto peaks = validation::march_peaks(one, {1.4, 600});
    for (std::size_t n = 0; n < peaks.size(); ++n) {
      const std::string at = fmt::format("{}, {}", one.name, place[n]);
      double worst = 0;
      for (std::size_t i = 0; i < peaks[n].ours.size(); ++i) {
        worst = std::max(worst, std::abs(peaks[n].ours[i] - peaks[n].reference[i]));
      }
      minutes.absolute("largest difference of a minute [K], " + at, 0, worst, 0.3);
      least.absolute("least minute less the first [K], " + at,
                     least_of(peaks[n].reference) - peaks[n].reference.front(),
                     least_of(peaks[n].ours) - peaks[n].ours.front(), 0.15);
      if (n != 1) continue;
      minutes.plot({fmt::format("{}: EFT in an hour with a peak", one.name),
                    "time [min]",
                    "EFT [degC]",
                    false,
                    false,
                    {curve("plug flow", peaks[n].reference, true), curve("by the minute", peaks[n].ours, false)}});
    }
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string setup =
      "a lone bore of 120 m, 50 W/m drawn for 12 h, standing for 1 h, drawn for 8 h, standing for 3 h, drawn again; "
      "the mean EFT of every minute of both hours after standing";
  auto& minutes = check.claim(
      {"inside-the-hour", "the minutes of an hour after standing are those of plug flow", Origin::computed,
       "plug flow along the characteristics: parcels of half a second that exchange with the same network of grout by "
       "backward Euler's method, the wall by the exact answer of the ground round a cylinder, superposed by minutes",
       setup,
       "0.3 K: what a limit on minutes is worth; a front that passes half a minute earlier or later counts in full"});
  auto& below =
      check.claim({"inside-the-hour-least", "after standing the coldest minute lies this far below the hour's mean",
                   Origin::computed, "the same reference: its least minute less its own mean of the hour", setup,
                   "0.15 K: of the 1 to 4 K themselves"});
  for (const validation::RestartCase& one : validation::restart_cases()) {
    const validation::RestartMinutes all = validation::march_restarts(one);
    const char* stood[] = {"1 h", "3 h"};
    for (std::size_t n = 0; n < one.restarts.size(); ++n) {
      const Hour hour(all, n);
      const std::string at = fmt::format("{}, after standing {}", one.name, stood[n]);
      minutes.absolute("largest difference of a minute [K], " + at, 0, hour.worst(), 0.3);
      double mean = 0;
      for (const double eft : hour.reference) mean += eft / 60;
      below.absolute("least minute less the hour's mean [K], " + at, least_of(hour.reference) - mean,
                     least_of(hour.ours) - hour.mean, 0.15);
      if (n == 0) {
        minutes.plot({fmt::format("{}: EFT in the first hour after an hour's standing", one.name),
                      "time [min]",
                      "EFT [degC]",
                      false,
                      false,
                      {curve("plug flow", hour.reference, true), curve("by the minute", hour.ours, false)}});
      }
    }
  }
  judge_peaks(check);
  return check.finish();
}
