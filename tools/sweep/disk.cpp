#include "tools/sweep/disk.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/assembly/assembly.hpp"
#include "engine/job/plan.hpp"
#include "engine/units/display.hpp"

namespace stillground::sweep {

namespace {

std::string size_text(double bytes) {
  constexpr double mega = 1e6, giga = 1e9;
  return bytes < giga ? fmt::format("{:.0f} MB", std::max(1.0, bytes / mega)) : fmt::format("{:.1f} GB", bytes / giga);
}

/// Of the first point that can be assembled, marched [bytes]; 0: there is none.
double bytes_of_a_result(const Points& points, bool marched) {
  constexpr std::size_t tried = 10;
  for (std::size_t number = 1; number <= std::min(points.walk().count(), tried); ++number) {
    try {
      model::Scenario scenario = points.scenario(number);
      scenario.run.method = marched ? model::Run::Method::march : model::Run::Method::screening;
      return job::result_bytes(assembly::assemble(std::move(scenario)));
    } catch (const InputError&) {  // a row of the summary will say it
    }
  }
  return 0;
}

}  // namespace

void announce(const Points& points) {
  const Plan& plan = points.plan();
  const std::size_t count = points.walk().count();
  std::size_t marches = plan.method == Method::march  ? count
                        : plan.method == Method::both ? std::min(count, plan.best)
                                                      : 0;
  double bytes = static_cast<double>(marches) * bytes_of_a_result(points, true);
  if (plan.keep_results && plan.method != Method::march)
    bytes += static_cast<double>(count) * bytes_of_a_result(points, false);
  fmt::print(stderr, "{} points; {}; results take up to {}{}\n", count, text_of(plan.method, plan.best),
             size_text(bytes), plan.method == Method::both ? ", and more where the screening is not sure" : "");
  std::error_code fault;
  const auto space = std::filesystem::space(points.folder().path(), fault);
  if (fault || static_cast<double>(space.available) >= bytes) return;
  throw SystemError(
      fmt::format("{}: results may take up to {}, and {} are free: give `record: {{fields: none}}`, vary less, "
                  "or take another disk",
                  points.folder().path().string(), size_text(bytes), size_text(static_cast<double>(space.available))));
}

}  // namespace stillground::sweep
