#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// Heat: laminar, turbulent, the transition, and other authors' correlations.
void judge_nusselt(Check& check);

/// Heat of fluid that stands.
void judge_standing(Check& check);

/// The films on both walls of an annulus: the same.
void judge_annulus(Check& check);

/// Friction: the same.
void judge_friction(Check& check);

/// A row of film_and_friction.csv.
using TableRow = std::map<std::string, std::string>;

inline double number(const TableRow& row, const std::string& name) {
  return std::stod(row.at(name));
}

/// `value` at 60 Reynolds numbers from 500 to 1e5, evenly on a logarithmic axis.
template <class Value>
Curve drawn(const std::string& label, Value value) {
  Curve curve{label, {}, false};
  for (int i = 0; i <= 60; ++i) {
    const double re = 500 * std::pow(200, i / 60.0);
    curve.points.emplace_back(re, value(re));
  }
  return curve;
}

/// Least rise of `value` from one to the next of 1701 Reynolds numbers through the transition.
template <class Value>
double least_rise(Value value) {
  double least = value(2301) - value(2300);
  for (int re = 2301; re < 4000; ++re) least = std::min(least, value(re + 1) - value(re));
  return least;
}

}  // namespace stillground::validation
