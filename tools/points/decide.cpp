#include "tools/points/decide.hpp"

#include "engine/record/read/result.hpp"

namespace stillground::points {

results::Decision decision_of(const job::Screened& screened) {
  return results::decision_of(job::header_afterwards(screened), screened.hours, screened.closing.minutes);
}

results::Decision screen(const model::Scenario& scenario, const screen::Batch* batch) {
  return decision_of(job::screened(scenario, batch));
}

results::Decision march(model::Scenario scenario, const job::Options& options) {
  scenario.run.method = model::Run::Method::march;
  job::run(scenario, options);
  return results::decision_of(record::read::Result(options.result));
}

}  // namespace stillground::points
