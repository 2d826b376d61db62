#include "tools/points/decide.hpp"

#include <algorithm>

#include "engine/record/read/result.hpp"

namespace stillground::points {

results::Decision decision_of(const job::Screened& screened) {
  return results::decision_of(job::header_afterwards(screened), screened.hours, screened.closing.minutes);
}

bool judges_minutes(const model::Scenario& scenario) {
  return std::any_of(scenario.limits.begin(), scenario.limits.end(),
                     [](const model::Limit& limit) { return limit.over == model::Limit::Over::minute; });
}

results::Decision screen(const model::Scenario& scenario, const screen::Batch* batch) {
  return decision_of(job::screened(scenario, batch, judges_minutes(scenario)));
}

results::Decision march(model::Scenario scenario, const job::Options& options) {
  scenario.run.method = model::Run::Method::march;
  job::run(scenario, options);
  return results::decision_of(record::read::Result(options.result));
}

}  // namespace stillground::points
