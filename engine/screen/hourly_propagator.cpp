#include "engine/screen/hourly_propagator.hpp"

#include <algorithm>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::screen {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::RowVectorXd;

namespace {

/// Columns on their way through the hour. A step h from t on, for x' = R x + B u(t) with K = (1 - gamma h R)^-1 and
/// c = (1 - gamma)/gamma:
///   x_1 = K (x + gamma h B u(t + gamma h)),   x_2 = K (x + c (x_1 - x) + gamma h B u(t + h)),   x(t + h) = x_2,
/// since h (R x_1 + B u_1) = (x_1 - x)/gamma: the rates cancel. A mean over the step has the stages' weights,
/// (1 - gamma) x_1 + gamma x_2; a mean over the hour is that of its steps.
class HourOfSteps {
 public:
  HourOfSteps(const Circuit& circuit, const Rates& rates, double step, const MatrixXd& start)
      : circuit_(circuit),
        step_(step),
        solver_(rates.of_state, march::ars222::gamma * step),
        given_(static_cast<std::size_t>(start.cols())),
        columns_(given_ + static_cast<std::size_t>(circuit.walls()) + 2),
        now_(static_cast<std::size_t>(circuit.size()), columns_),
        driven_(now_) {
    for (std::size_t i = 0; i < rows(); ++i) {
      for (std::size_t c = 0; c < given_; ++c) now_.row(i)[c] = start(static_cast<Index>(i), static_cast<Index>(c));
      const auto inputs = rates.of_inputs.row(static_cast<Index>(i));
      const auto walls = circuit.walls();
      double* driven = driven_.row(i) + given_;
      for (Index w = 0; w < walls; ++w) driven[w] = march::ars222::gamma * step * inputs(w);
      driven[walls] = march::ars222::gamma * step * inputs.head(walls).sum();  // by the part of the hour gone by
      driven[walls + 1] = march::ars222::gamma * step * inputs(walls);
    }
    outlet_ = down_ = RowVectorXd::Zero(static_cast<Index>(columns_));
  }

  void march() {
    using march::ars222::gamma;
    const auto steps = static_cast<int>(std::lround(seconds_per_hour / step_));
    for (int i = 0; i < steps; ++i) {
      PackedRows stage = now_;
      drive(stage, (i + gamma) / steps);
      solver_.solve(stage);
      look(stage, (1 - gamma) / steps);
      constexpr double carried = (1 - gamma) / gamma;
      for (std::size_t e = 0; e < now_.entries.size(); ++e) {
        for (std::size_t v = 0; v < Pack::width; ++v) {
          double& x = now_.entries[e].values[v];
          x += carried * (stage.entries[e].values[v] - x);
        }
      }
      drive(now_, (i + 1.0) / steps);
      solver_.solve(now_);
      look(now_, gamma / steps);
    }
  }

  HourOfColumns result() const {
    HourOfColumns hour{RowMatrix(static_cast<Index>(rows()), static_cast<Index>(columns_)), outlet_, down_};
    for (std::size_t i = 0; i < rows(); ++i) {
      for (std::size_t c = 0; c < columns_; ++c)
        hour.after(static_cast<Index>(i), static_cast<Index>(c)) = now_.row(i)[c];
    }
    return hour;
  }

 private:
  std::size_t rows() const { return static_cast<std::size_t>(circuit_.size()); }

  void drive(PackedRows& columns, double gone_by) const {
    const std::size_t change = columns_ - 2;
    for (std::size_t i = 0; i < rows(); ++i) {
      double* to = columns.row(i);
      const double* by = driven_.row(i);
      for (std::size_t c = given_; c < columns_; ++c) to[c] += c == change ? gone_by * by[c] : by[c];
    }
  }

  void look(const PackedRows& columns, double weight) {
    const auto see = [&](const RowVectorXd& unit, RowVectorXd& sum) {
      Index place = 0;
      unit.maxCoeff(&place);
      const double* row = columns.row(static_cast<std::size_t>(place));
      for (std::size_t c = 0; c < columns_; ++c) sum(static_cast<Index>(c)) += weight * row[c];
    };
    see(circuit_.outlet(), outlet_);
    see(circuit_.topmost_down(), down_);
  }

  const Circuit& circuit_;
  double step_;
  StageSolver solver_;
  std::size_t given_, columns_;
  PackedRows now_, driven_;
  RowVectorXd outlet_, down_;
};

}  // namespace

HourOfColumns over_an_hour(const Circuit& circuit, const Rates& rates, double step, const MatrixXd& start) {
  HourOfSteps hour(circuit, rates, step, start);
  hour.march();
  return hour.result();
}

HourlyPropagator::HourlyPropagator(const Circuit& circuit, const HourOfColumns& hour, const MatrixXd& modes) {
  const Places places{static_cast<std::size_t>(modes.cols()), static_cast<std::size_t>(circuit.walls())};
  entries_ = PackedRows(places.columns(), places.rows());
  const MatrixXd after = modes.transpose() * hour.after;
  for (std::size_t column = 0; column < places.columns(); ++column) {
    const auto c = static_cast<Index>(column);
    double* to = entries_.row(column);
    for (std::size_t row = 0; row < places.modes; ++row) to[row] = after(static_cast<Index>(row), c);
    to[places.outlet()] = hour.outlet(c);
    to[places.down()] = hour.down(c);
    for (std::size_t wall = 0; wall < places.walls; ++wall) to[places.heat(wall)] = hour.after(circuit.heat(wall), c);
  }
}

void HourlyPropagator::add(double part, const double* driven, std::vector<Pack>& result) const {
  entries_.add_transposed(part, driven, result.data());
}

void HourlyPropagator::add_column(std::size_t column, double times, std::vector<Pack>& result) const {
  const double* from = entries_.row(column);
  double* to = result.front().values;
  for (std::size_t i = 0; i < result.size() * Pack::width; ++i) to[i] += times * from[i];
}

HourlyPropagator HourlyPropagator::between(const HourlyPropagator& a, const HourlyPropagator& b, double part) {
  HourlyPropagator propagator = a;
  for (std::size_t i = 0; i < a.entries_.entries.size(); ++i) {
    for (std::size_t v = 0; v < Pack::width; ++v) {
      double& entry = propagator.entries_.entries[i].values[v];
      entry = std::lerp(entry, b.entries_.entries[i].values[v], part);
    }
  }
  return propagator;
}

}  // namespace stillground::screen
