#pragma once

#include <cmath>
#include <vector>

#include "engine/record/frames.hpp"
#include "tests/catch.hpp"

namespace stillground::testing {

/// Equal bit for bit, or both not a number.
template <class T>
bool same(const std::vector<T>& a, const std::vector<T>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (!(a[i] == b[i]) && !(std::isnan(a[i]) && std::isnan(b[i]))) return false;
  }
  return true;
}

/// Equal to within the two roundings of kelvin -> degC -> kelvin, or both not a number.
inline bool same_temperatures(const std::vector<double>& a, const std::vector<double>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (std::isnan(a[i]) != std::isnan(b[i])) return false;
    if (std::abs(a[i] - b[i]) > 1e-12 * std::abs(b[i])) return false;
  }
  return true;
}

}  // namespace stillground::testing
