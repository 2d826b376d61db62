#include "validation/reference_solutions/step_response.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace stillground::reference_solutions {

StepResponse::StepResponse(std::vector<double> times, std::vector<double> values)
    : times_(std::move(times)), values_(std::move(values)) {
  if (times_.size() < 6 || times_.size() != values_.size()) throw std::invalid_argument("too short a step response");
}

double StepResponse::at(double time) const {
  if (time <= times_.front()) return values_.front() * time / times_.front();
  if (time > times_.back()) throw std::out_of_range("beyond the step response's table");
  const double spacing = std::log(times_[1] / times_[0]);
  const double place = std::log(time / times_[0]) / spacing;
  const auto last = static_cast<double>(times_.size() - 6);
  const auto first = static_cast<std::size_t>(std::clamp(std::floor(place) - 2, 0.0, last));
  double sum = 0;
  for (std::size_t i = 0; i < 6; ++i) {
    double weight = 1;
    for (std::size_t j = 0; j < 6; ++j) {
      if (j == i) continue;
      weight *= (place - static_cast<double>(first + j)) / (static_cast<double>(i) - static_cast<double>(j));
    }
    sum += weight * values_[first + i];
  }
  return sum;
}

double StepResponse::mean(double from, double to) const {
  constexpr std::array<double, 2> node = {0.3399810435848563, 0.8611363115940526};
  constexpr std::array<double, 2> weight = {0.6521451548625461, 0.3478548451374538};
  const double middle = (from + to) / 2, half = (to - from) / 2;
  double sum = 0;
  for (std::size_t i = 0; i < 2; ++i) {
    sum += weight[i] / 2 * (at(middle - half * node[i]) + at(middle + half * node[i]));
  }
  return sum;
}

std::vector<double> StepResponse::hourly_means(std::size_t hours) const {
  std::vector<double> result;
  double first = 0;
  for (int part = 0; part < 12; ++part) first += mean(300.0 * part, 300.0 * (part + 1)) / 12;
  result.push_back(first);
  for (std::size_t i = 1; i < hours; ++i) {
    result.push_back(mean(3600.0 * static_cast<double>(i), 3600.0 * static_cast<double>(i + 1)));
  }
  return result;
}

double superposed(const std::vector<double>& loads, const std::vector<double>& means, std::size_t from,
                  std::size_t to) {
  // One jump's part in the hours [from, to) is the sum of the step's means over as many hours: a sliding window.
  double sum = 0, window = 0;
  for (std::size_t hour = to; hour-- > 0;) {
    window += means[to - 1 - hour];
    if (hour + (to - from) < to) window -= means[from - 1 - hour];
    sum += (loads[hour] - (hour > 0 ? loads[hour - 1] : 0)) * window;
  }
  return sum / static_cast<double>(to - from);
}

}  // namespace stillground::reference_solutions
