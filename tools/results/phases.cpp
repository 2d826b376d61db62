#include "tools/results/phases.hpp"

#include <algorithm>

#include "tools/present/palette.hpp"

namespace stillground::results {

std::vector<double> later_starts(const std::vector<record::BoreRow>& bores) {
  std::vector<double> starts;
  for (const record::BoreRow& bore : bores) {
    if (bore.start > 0) starts.push_back(bore.start);
  }
  std::sort(starts.begin(), starts.end());
  starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
  return starts;
}

std::string phase_name(double phase, const Date& start) {
  return "phase from " + iso(plus_days(start, static_cast<long>(phase / seconds_per_day)));
}

std::vector<present::Mark> phase_marks(const std::vector<double>& phases, const Date& start, int years) {
  std::vector<present::Mark> marks;
  for (const double phase : phases) {
    if (phase >= years * seconds_per_year) continue;
    // Run-year n reaches from n - 1/2 to n + 1/2.
    marks.push_back({phase / seconds_per_year + 0.5, phase_name(phase, start), present::bore_ink});
  }
  return marks;
}

}  // namespace stillground::results
