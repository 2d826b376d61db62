#include "engine/response/step_response.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace stillground::response {

StepResponse::StepResponse(std::vector<long> at_hours, std::vector<double> knot_values)
    : hours(std::move(at_hours)), values(std::move(knot_values)) {
  for (std::size_t j = 0; j + 1 < hours.size(); ++j) {
    slopes.push_back((values[j + 1] - values[j]) / static_cast<double>(hours[j + 1] - hours[j]));
  }
}

double StepResponse::after(long n) const {
  const auto above = std::upper_bound(hours.begin(), hours.end(), n);
  if (above == hours.end()) return values.back();
  const auto j = static_cast<std::size_t>(above - hours.begin()) - 1;
  return values[j] + slopes[j] * static_cast<double>(n - hours[j]);
}

}  // namespace stillground::response
