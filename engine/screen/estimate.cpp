#include "engine/screen/estimate.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

#include "engine/assembly/phases.hpp"
#include "engine/response/single_bore.hpp"
#include "engine/screen/screening.hpp"

namespace stillground::screen {

namespace {

void check(const assembly::Assembly& assembly) {
  if (assembly::Phases(assembly).all_alike()) return;
  throw InputError(
      assembly.scenario.place("run.method"), "run.method",
      "screening superposes one step response of the whole field: bores that start or stop within the run, "
      "or have a flow_weight of their own, need `method: march`");
}

/// Pieces of a bore's wall, in parts of its depth: thin ones at the top, where the seasons are.
std::vector<double> wall_parts(std::size_t bores) {
  constexpr double thinnest = 0.1, growth = 2.2;  // against the thickest
  const std::size_t count = bores == 1 ? 8 : bores == 2 ? 6 : 4;
  std::vector<double> parts;
  for (double part = thinnest; parts.size() < count; part *= growth) parts.push_back(std::min(part, 1.0));
  const double sum = std::accumulate(parts.begin(), parts.end(), 0.0);
  for (double& part : parts) part /= sum;
  return parts;
}

}  // namespace

Estimate superposed(const assembly::Assembly& assembly, const LayoutAnswers& answers, const TakeYear& take) {
  Screening screening(assembly, answers);
  std::vector<record::Hour> hours(hours_per_year);
  for (int year = 0; year < assembly.scenario.run.years; ++year) {
    for (record::Hour& hour : hours) hour = screening.hour();
    take(hours);
  }
  return {screening.statistics(), answers.field.misfit, screening.largest_rise()};
}

LayoutAnswers layout_answers(const assembly::Assembly& assembly) {
  check(assembly);
  const int in_series = assembly.scenario.flow.in_series;
  LayoutAnswers layout{wall_parts(static_cast<std::size_t>(in_series)), {}, {}};
  const auto answers_of = [&](const assembly::Assembly& field) {
    return fitted(response::field_response(field, layout.parts), 4 * assembly.duration());
  };
  layout.field = answers_of(assembly);
  if (in_series > 1) layout.lone = answers_of(assembly::assemble(response::lone_bore(assembly, {}), assembly));
  return layout;
}

Estimate estimate(const assembly::Assembly& assembly, const TakeYear& take) {
  return superposed(assembly, layout_answers(assembly), take);
}

}  // namespace stillground::screen
