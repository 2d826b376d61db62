#include "engine/forecast/error_estimate.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "engine/base/errors.hpp"
#include "engine/forecast/error_responses.hpp"
#include "engine/forecast/restarts.hpp"
#include "engine/response/heat_history.hpp"
#include "engine/response/superposition.hpp"

namespace stillground::forecast {

namespace {

constexpr double margin = 1.25;

/// An error's growth by the film's feedback, hour by hour.
class Grown {
 public:
  double next(double error, const response::HeatHistory& history, std::size_t hour) {
    const double back = std::min<double>(history.feedback[hour] * last_, history.feedback_limit[hour]);
    return last_ = error + back;
  }

 private:
  double last_ = 0;
};

/// Largest difference between the neighbours' sum and its continuation along the line through the last two refreshes.
double refresh_error(const assembly::Assembly& assembly, const response::StepResponse& neighbours,
                     const std::vector<double>& heat_before) {
  const long hours = assembly.hours();
  const long interval = std::lround(assembly.multirate.update_interval / seconds_per_hour);
  const auto sum = [&](long hour) { return hour <= 0 ? 0.0 : response::superposed(neighbours, heat_before, hour); };
  double largest = 0, before = 0, now = 0;
  for (long start = 0; start < hours; start += interval) {
    const long end = std::min(start + interval, hours - 1);
    const double ahead = static_cast<double>(end - start) / static_cast<double>(interval);
    const double reached = sum(end);
    largest = std::max(largest, std::abs(reached - (now + ahead * (now - before))));
    before = now;
    now = reached;
  }
  return largest;
}

}  // namespace

namespace {

record::ErrorEstimate estimated(const assembly::Assembly& assembly) {
  const ErrorResponses responses = error_responses(assembly);
  const response::HeatHistory history = response::predict_heat(assembly, responses.rise);
  const RestartResidual residual = restart_residual(assembly, responses);
  const bool lone = assembly.bores.size() == 1;
  const double refresh = lone ? 0 : refresh_error(assembly, responses.neighbours, history.before);
  const std::vector<double> by_steps = response::superposed(responses.step, history.before);
  const std::vector<double> by_rings = response::superposed(responses.rings, history.before);
  const std::vector<double> by_layers = response::superposed(responses.layers, history.before);
  Grown by_step, by_grid, by_refresh, by_all;
  record::ErrorEstimate error;
  for (long hour = 0; hour < assembly.hours(); ++hour) {
    const auto i = static_cast<std::size_t>(hour);
    if (!history.flows[i]) continue;
    const double step = std::abs(by_steps[i]) + residual.step;
    const double grid = std::abs(by_rings[i]) + std::abs(by_layers[i]) + residual.layers;
    error.step = std::max(error.step, margin * by_step.next(step, history, i));
    error.grid = std::max(error.grid, margin * by_grid.next(grid, history, i));
    error.refresh = std::max(error.refresh, margin * by_refresh.next(refresh, history, i));
    error.total = std::max(error.total, margin * by_all.next(step + grid + refresh, history, i));
  }
  return error;
}

}  // namespace

record::ErrorEstimate estimate_errors(const assembly::Assembly& assembly) {
  try {
    return estimated(assembly);
  } catch (const NumericsError&) {
    // Loads that no field meets: the march itself says so, with date and cause.
    constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
    return {unknown, unknown, unknown, unknown};
  }
}

}  // namespace stillground::forecast
