#include "engine/screen/own_error.hpp"

#include <algorithm>
#include <cmath>

#include "engine/response/single_bore.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::screen {

namespace {

constexpr long month = hours_per_year / 12;
// Of the lone circuit's differences, and of the rise.
constexpr double raised_month = 2, raised_hour = 2.5;
constexpr double part_month = 0.007, part_hour = 0.010;

/// Largest differences of two runs of one circuit over their hours with flow.
record::ScreeningError differences(const std::vector<record::Hour>& screened,
                                   const std::vector<record::Hour>& marched) {
  record::ScreeningError largest{0, 0};
  double sum = 0, flowing = 0;
  for (std::size_t i = 0; i < marched.size(); ++i) {
    if (marched[i].flow > 0) {
      const double difference = screened[i].eft - marched[i].eft;
      largest.hour = std::max(largest.hour, std::abs(difference));
      sum += difference;
      ++flowing;
    }
    if ((static_cast<long>(i) + 1) % month == 0) {
      if (flowing > 0) largest.month = std::max(largest.month, std::abs(sum / flowing));
      sum = flowing = 0;
    }
  }
  return largest;
}

}  // namespace

record::ScreeningError own_error(const assembly::Assembly& assembly, const Estimate& estimate) {
  const assembly::Assembly lone = lone_circuit(assembly);
  return own_error(assembly, estimate, lone, layout_answers(lone));
}

assembly::Assembly lone_circuit(const assembly::Assembly& assembly) {
  return assembly::assemble(response::lone_circuit(assembly, 1), assembly);
}

record::ScreeningError own_error(const assembly::Assembly& assembly, const Estimate& estimate,
                                 const assembly::Assembly& lone, const LayoutAnswers& answers) {
  std::vector<record::Hour> screened, marched;
  superposed(lone, answers, [&](std::span<const record::Hour> year) { screened.assign(year.begin(), year.end()); });
  simulation::Simulation simulation(lone, 1);
  while (!simulation.finished()) marched.push_back(simulation.march_hour());
  const record::ScreeningError circuit = differences(screened, marched);
  const bool neighbours = assembly.bores.size() > 1;
  const double rise = neighbours ? estimate.largest_rise : 0;
  return {raised_month * circuit.month + part_month * rise, raised_hour * circuit.hour + part_hour * rise};
}

}  // namespace stillground::screen
