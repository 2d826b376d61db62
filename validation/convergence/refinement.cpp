#include "validation/convergence/refinement.hpp"

#include <fmt/format.h>

#include <cmath>

namespace stillground::validation {

double Refinement::difference(std::size_t i) const {
  double sum = 0;
  for (std::size_t n = 0; n < answers[i].size(); ++n) sum += std::pow(answers[i][n] - answers[i + 1][n], 2);
  return std::sqrt(sum / static_cast<double>(answers[i].size()));
}

double Refinement::order(std::size_t i) const {
  return std::log2(difference(i) / difference(i + 1));
}

double Refinement::fitted_order() const {
  const std::size_t n = answers.size() - 1;
  double x = 0, y = 0, xx = 0, xy = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double size = std::log2(sizes[i]), value = std::log2(difference(i));
    x += size;
    y += value;
    xx += size * size;
    xy += size * value;
  }
  const auto count = static_cast<double>(n);
  return (count * xy - x * y) / (count * xx - x * x);
}

double Refinement::error(std::size_t i) const {
  return difference(i) / (1 - std::pow(2, -fitted_order()));
}

void Refinement::rows(Claim& claim, const std::string& what, const std::string& unit_of_size, double least, double most,
                      std::size_t at, double allowed, const std::string& unit,
                      const std::map<std::size_t, KnownMiss>& known) const {
  claim.between(what + ": fitted order", least, most, fitted_order());
  for (std::size_t i = 0; i + 2 < answers.size(); ++i) {
    const std::string row = fmt::format("{}: order from {:.3g}, {:.3g}, {:.3g} {}", what, sizes[i], sizes[i + 1],
                                        sizes[i + 2], unit_of_size);
    if (known.contains(i)) {
      claim.known_absolute_miss(row, (least + most) / 2, order(i), (most - least) / 2, known.at(i).bound,
                                known.at(i).reason);
    } else {
      claim.between(row, least, most, order(i));
    }
  }
  claim.between(fmt::format("{}: Richardson's error at {:.3g} {} [{}]", what, sizes[at], unit_of_size, unit), 0,
                allowed, error(at));
  Curve curve{what, {}, false};
  for (std::size_t i = 0; i + 1 < answers.size(); ++i) curve.points.emplace_back(sizes[i], difference(i));
  claim.plot(
      {what + ": difference to half the size", unit_of_size, "rms difference [" + unit + "]", true, true, {curve}});
}

}  // namespace stillground::validation
