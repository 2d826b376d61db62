#include "engine/job/screened.hpp"

#include <fmt/format.h>

#include <utility>

#include "engine/assembly/shown.hpp"
#include "engine/job/header.hpp"
#include "engine/job/warnings.hpp"
#include "engine/record/write/result_file.hpp"
#include "engine/screen/assemble.hpp"
#include "engine/screen/own_error.hpp"
#include "engine/transit/minute_extremes.hpp"

namespace stillground::job {

namespace {

Warning off_the_march(const model::Scenario& scenario, const record::ScreeningError& error) {
  return {scenario.place("run.method"),
          fmt::format("a screening estimate: a march of the same scenario may differ from it by up to {} in a "
                      "month's mean EFT and {} in an hour's, as it estimates itself",
                      assembly::shown(scenario, error.month, "K", 2), assembly::shown(scenario, error.hour, "K", 2)),
          ""};
}

}  // namespace

Afterwards after_screening(const assembly::Assembly& assembly, const screen::Estimate& estimate,
                           const record::ScreeningError& own_error, std::span<const record::Hour> hours, bool minutes) {
  Afterwards afterwards;
  afterwards.closing.screening_error = own_error;
  afterwards.warnings = warnings_after(assembly, estimate.statistics);
  afterwards.warnings.push_back(off_the_march(assembly.scenario, afterwards.closing.screening_error));
  if (minutes) afterwards.closing.minutes = transit::minute_extremes(assembly, hours);
  afterwards.closing.warnings = stored_lines(afterwards.warnings);
  return afterwards;
}

Screened screened(model::Scenario scenario, const screen::Batch* batch, bool minutes) {
  scenario.run.method = model::Run::Method::screening;
  const assembly::Assembly assembly =
      batch != nullptr ? assembly::coupled(batch->assembled(scenario)) : screen::assemble(std::move(scenario));
  Screened run{make_header(assembly, warnings_before(assembly)), {}, {}};
  run.hours.reserve(static_cast<std::size_t>(assembly.hours()));
  const screen::TakeYear take = [&](std::span<const record::Hour> year) {
    run.hours.insert(run.hours.end(), year.begin(), year.end());
  };
  const screen::Estimate estimate = batch != nullptr ? batch->screen(assembly, take) : screen::estimate(assembly, take);
  const record::ScreeningError own_error =
      batch != nullptr ? batch->own_error(assembly, estimate) : screen::own_error(assembly, estimate);
  run.closing = after_screening(assembly, estimate, own_error, run.hours, minutes).closing;
  return run;
}

record::Header header_afterwards(const Screened& screened) {
  record::Header header = screened.header;
  header.warnings.insert(header.warnings.end(), screened.closing.warnings.begin(), screened.closing.warnings.end());
  header.screening_error = screened.closing.screening_error;
  return header;
}

void write_result(const Screened& screened, const std::filesystem::path& file) {
  record::ResultFile result(file, screened.header, 0);
  result.add(screened.hours);
  result.finish(screened.closing);
}

}  // namespace stillground::job
