#include "engine/screen/modes.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <numeric>
#include <random>

#include "engine/base/calendar.hpp"
#include "engine/screen/hourly_propagator.hpp"

namespace stillground::screen {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

constexpr Index hours = 720;
constexpr double strongest = 50;  // load per metre of bore [W/m]
constexpr int season = 90;        // hours for which loads have one sign

PackedRows packed(const MatrixXd& rows) {
  PackedRows made(static_cast<std::size_t>(rows.rows()), static_cast<std::size_t>(rows.cols()));
  for (Index i = 0; i < rows.rows(); ++i) {
    for (Index c = 0; c < rows.cols(); ++c) made.row(static_cast<std::size_t>(i))[c] = rows(i, c);
  }
  return made;
}

/// What hours leave behind, one a column, from rest on: fluid that flows or stands, for an hour or many, with loads at
/// random, mostly of one sign for `season` hours; walls that answer their heat, on undisturbed ground of the run's.
MatrixXd random_hours(const Circuit& circuit, const std::vector<CircuitAtFlow>& regimes,
                      const std::vector<HourOfColumns>& in_an_hour, CircuitWalls walls) {
  std::mt19937 bits(1);
  const auto chance = [&] { return static_cast<double>(bits()) * 0x1p-32; };
  const auto any_flow = [&] {
    return 1 + static_cast<std::size_t>(chance() * static_cast<double>(regimes.size() - 1));
  };
  const Index size = circuit.size(), count = circuit.walls();
  const double metres = static_cast<double>(circuit.shape().bores) * circuit.shape().depth();
  const std::size_t pieces = walls.undisturbed.front().size();
  MatrixXd seen(size, hours);
  VectorXd driven = VectorXd::Zero(size + count + 2);
  std::vector<PackedRows> columns;  // of an hour in each regime
  for (const HourOfColumns& hour : in_an_hour) columns.push_back(packed(hour.after.transpose()));
  std::vector<Pack> after(columns.front().packs);
  std::vector<Pack> heat(walls.history.bores(), Pack{});
  std::size_t now = 0;
  for (Index hour = 0; hour < hours; ++hour) {
    const auto period = static_cast<std::size_t>(hour / season);
    const auto& undisturbed = walls.undisturbed[period % walls.undisturbed.size()];
    const double mean = std::accumulate(undisturbed.begin(), undisturbed.end(), 0.0) / static_cast<double>(pieces);
    if (chance() < 0.5) {
      now = chance() < 0.3 ? 0 : any_flow();
      const double sign = period % 2 == 0 ? 1 : -1;
      driven(size + count + 1) = now == 0 ? 0 : sign * strongest * metres * (1.2 * chance() - 0.2);
    }
    for (std::size_t w = 0; w < circuit.shape().walls(); ++w) {
      driven(size + static_cast<Index>(w)) =
          undisturbed[w % pieces] - mean + walls.history.rise()[w / pieces].values[w % pieces];
    }
    std::fill(after.begin(), after.end(), Pack{});
    columns[now].add_transposed(1, driven.data(), after.data());
    std::copy_n(after.front().values, size, driven.data());
    for (std::size_t w = 0; w < circuit.shape().walls(); ++w) {
      heat[w / pieces].values[w % pieces] = driven(circuit.heat(w)) / seconds_per_hour;
      driven(circuit.heat(w)) = 0;
    }
    walls.history.advance(heat);
    seen.col(hour) = driven.head(size);
  }
  return seen;
}

}  // namespace

MatrixXd modes(const Circuit& circuit, const std::vector<CircuitAtFlow>& regimes, double step,
               const CircuitWalls& walls, Index count) {
  const Index size = circuit.size();
  std::vector<HourOfColumns> in_an_hour;
  for (const auto& [network, heat_rate] : regimes) {
    in_an_hour.push_back(
        over_an_hour(circuit, circuit.rates(network, heat_rate), step, MatrixXd::Identity(size, size)));
  }
  MatrixXd seen = random_hours(circuit, regimes, in_an_hour, walls);
  MatrixXd known(size, 2);
  known.col(0) = circuit.at_rest(std::vector<double>(static_cast<std::size_t>(circuit.walls()), 1.0)).normalized();
  known.col(1) = circuit.stored_heat(regimes.front().network);
  known.col(1) -= known.col(0) * known.col(0).dot(known.col(1));
  known.col(1).normalize();
  seen -= known * (known.transpose() * seen);
  MatrixXd products = MatrixXd::Zero(size, size);
  products.selfadjointView<Eigen::Lower>().rankUpdate(seen);
  const Eigen::SelfAdjointEigenSolver<MatrixXd> strongest_last(products);  // reads the lower half
  const Index others = std::min(count, size - circuit.walls()) - known.cols();
  MatrixXd made(size, others + known.cols());
  made << known, strongest_last.eigenvectors().rightCols(others);
  return made;
}

}  // namespace stillground::screen
