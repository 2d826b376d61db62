#include "validation/harness/screening_trial.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "engine/screen/assemble.hpp"
#include "engine/screen/own_error.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::validation {

namespace {

struct Extremes {
  double least = std::numeric_limits<double>::infinity(), greatest = -least;

  void see(double eft) {
    least = std::min(least, eft);
    greatest = std::max(greatest, eft);
  }
};

}  // namespace

ScreeningTrial screening_trial(const model::Scenario& scenario) {
  const assembly::Assembly assembly = assembly::assemble(scenario);
  const assembly::Assembly few = screen::assemble(scenario);
  std::vector<record::Hour> screened;
  const screen::Estimate estimate = screen::estimate(
      few, [&](std::span<const record::Hour> year) { screened.insert(screened.end(), year.begin(), year.end()); });
  const record::ScreeningError own = screen::own_error(few, estimate);
  ScreeningTrial trial;
  trial.estimated_month = own.month;
  trial.estimated_hour = own.hour;
  simulation::Simulation simulation(assembly, 1);
  Extremes of_screening, of_march;
  std::size_t hour = 0;
  for (int month = 0; month < 12 * scenario.run.years; ++month) {
    const auto calendar = static_cast<std::size_t>((scenario.run.start.month - 1 + month) % 12);
    double sum = 0, flowing = 0;
    for (int i = 0; i < 24 * days_of_month.at(calendar); ++i, ++hour) {
      const record::Hour marched = simulation.march_hour();
      if (marched.flow == 0) continue;
      const double miss = screened[hour].eft - marched.eft;
      trial.hour = std::max(trial.hour, std::abs(miss));
      of_screening.see(screened[hour].eft);
      of_march.see(marched.eft);
      sum += miss;
      ++flowing;
    }
    if (flowing > 0) trial.month = std::max(trial.month, std::abs(sum / flowing));
  }
  trial.least = std::abs(of_screening.least - of_march.least);
  trial.greatest = std::abs(of_screening.greatest - of_march.greatest);
  return trial;
}

}  // namespace stillground::validation
