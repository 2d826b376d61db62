#include "engine/screen/circuit.hpp"

#include <Eigen/Dense>
#include <cmath>

#include "engine/screen/hourly_propagator.hpp"
#include "engine/screen/modes.hpp"
#include "engine/screen/stage_solver.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

/// A U of 120 m in grout that stores heat, invented.
bore::Network network() {
  return bore::make_network(bore::NetworkParts{.bore_resistance = 0.1,
                                               .internal_resistance = 0.4,
                                               .even_share = 0.4,
                                               .odd_share = 0.3,
                                               .grout_capacity = 4.5e4,
                                               .fluid_capacity = 3900.0,
                                               .even_spread = 0.2,
                                               .odd_wall_share = 0.2,
                                               .ground_capacity = 4e4});
}

constexpr double flow = 1600;  // m c [W/K]

screen::WallAnswers answers(std::vector<double> time_constants, double amplitude, std::size_t pieces) {
  screen::WallAnswers made{std::vector<double>(pieces, 0.01), std::move(time_constants), {}, 0};
  made.amplitudes.assign(pieces, std::vector<double>(made.time_constants.size(), amplitude));
  return made;
}

screen::Circuit circuit(std::size_t bores = 1) {
  const std::vector<double> heights{10, 30, 40, 40};
  return {{bores, 1, heights, 2},
          {std::vector<double>(4, 0.01), answers({600, 9000}, 0.03, 4), std::vector<double>(4, 0)}};
}

Eigen::VectorXd driven_from_rest(const screen::Circuit& circuit) {
  return Eigen::VectorXd::Zero(circuit.size() + circuit.walls() + 2);
}

}  // namespace

TEST_CASE("A stage's factors without pivots solve a circuit as a general solver does") {
  const screen::Circuit two = circuit(2);
  const screen::RowMatrix rates = two.rates(network(), flow).of_state;
  const auto n = static_cast<std::size_t>(rates.rows());
  screen::PackedRows columns(n, 3);
  Eigen::MatrixXd right(n, 3);
  test::Noise noise;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t c = 0; c < 3; ++c)
      right(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(c)) = columns.row(i)[c] = noise() - 0.5;
  }
  screen::StageSolver(rates, 527).solve(columns);
  const Eigen::MatrixXd stage = Eigen::MatrixXd::Identity(rates.rows(), rates.rows()) - 527 * Eigen::MatrixXd(rates);
  const Eigen::MatrixXd solution = stage.fullPivLu().solve(right);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t c = 0; c < 3; ++c)
      CHECK(columns.row(i)[c] ==
            Approx(solution(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(c))).margin(1e-12));
  }
}

TEST_CASE("A circuit gives its heat to the wall and to what it stores") {
  for (const std::size_t bores : {1, 2}) {
    const screen::Circuit series = circuit(bores);
    const Eigen::Index size = series.size();
    const auto hour = screen::over_an_hour(series, series.rates(network(), flow), 1800, Eigen::MatrixXd::Zero(size, 0));
    const Eigen::VectorXd after = 6000 * hour.after.col(hour.after.cols() - 1);  // W
    const double metres = 120 * static_cast<double>(bores);
    double given = 0;
    for (std::size_t w = 0; w < series.shape().walls(); ++w)
      given += series.shape().part_of(w) * metres * after(series.heat(w));
    const double stored = metres * series.stored_heat(network()).dot(after);
    CHECK(given > 0);
    CHECK(stored + given == Approx(6000 * 3600.0).epsilon(1e-9));
  }
}

TEST_CASE("A circuit at rest with unlike walls stays so where nothing flows and nothing is taken") {
  const screen::Circuit still = circuit();
  const std::vector<double> ambient(4, 285);
  const auto hour = screen::over_an_hour(still, still.rates(network(), 0), 1800, still.at_rest(ambient));
  Eigen::VectorXd inputs = Eigen::VectorXd::Zero(hour.after.cols());
  inputs(0) = 1;
  for (Eigen::Index w = 0; w < 4; ++w) inputs(1 + w) = 285;
  CHECK(hour.outlet.dot(inputs) == Approx(285).epsilon(1e-12));
  CHECK((hour.after * inputs)(still.heat(2)) == Approx(0).margin(1e-6));
}

TEST_CASE("Thirty modes tell an hour's outlet within 0.01 K of the whole circuit's at 50 W/m, and keep its heat") {
  const screen::Circuit whole = circuit();
  const std::vector<screen::CircuitAtFlow> regimes{{network(), 0}, {network(), flow}};
  const screen::WallAnswers far = answers({1e5, 1e7}, 0.05, 4);
  screen::WallHistory history(1, far, far, 3600);
  const std::vector<std::vector<double>> undisturbed{{-2, -1, 1, 2}, {4, -1, 1, 2}};
  const Eigen::MatrixXd modes = screen::modes(whole, regimes, 1800, {history, undisturbed}, 30);
  std::vector<screen::HourOfColumns> all;
  std::vector<screen::HourlyPropagator> few;
  for (const auto& [of, heat_rate] : regimes) {
    const screen::Rates rates = whole.rates(of, heat_rate);
    all.push_back(screen::over_an_hour(whole, rates, 1800, Eigen::MatrixXd::Identity(whole.size(), whole.size())));
    few.emplace_back(whole, screen::over_an_hour(whole, rates, 1800, modes), modes);
  }
  const screen::HourlyPropagator::Places places{30, 4};
  Eigen::VectorXd state = driven_from_rest(whole);
  std::vector<double> amplitudes(places.columns(), 0.0);
  test::Noise noise;
  double most = 0, heat_of_all = 0, heat_of_few = 0, turned_over = 0;
  for (int hour = 0; hour < 500; ++hour) {
    const bool flows = noise() < 0.6;
    const double load = flows ? 12000 * (noise() - 0.5) : 0;  // 120 m
    state(state.size() - 1) = amplitudes[places.load()] = load;
    for (std::size_t w = 0; w < 4; ++w) {
      state(whole.size() + static_cast<Eigen::Index>(w)) = amplitudes[places.ambient(w)] =
          undisturbed[0][w] + 2 * std::sin(hour / 50.0);
    }
    std::vector<screen::Pack> after((places.rows() + 7) / 8, screen::Pack{});
    few[flows].add(1, amplitudes.data(), after);
    const auto at = [&](std::size_t row) { return after[row / 8].values[row % 8]; };
    if (flows) most = std::max(most, std::abs(at(places.outlet()) - all[flows].outlet.dot(state)));
    state.head(whole.size()) = (all[flows].after * state).eval();
    for (std::size_t w = 0; w < 4; ++w) {
      heat_of_all += whole.shape().part_of(w) * state(whole.heat(w));
      heat_of_few += whole.shape().part_of(w) * at(places.heat(w));
      state(whole.heat(w)) = 0;
    }
    turned_over += std::abs(load) * 3600 / 120;
    for (std::size_t i = 0; i < places.modes; ++i) amplitudes[i] = at(i);
  }
  CHECK(most > 0);
  CHECK(most < 0.01);
  CHECK(std::abs(heat_of_few - heat_of_all) < 1e-3 * turned_over);
}

TEST_CASE("Walls answer heat as the terms say, bores in series as one alone and as the neighbours of all") {
  const screen::WallAnswers field = answers({4e5, 2e7}, 0.05, 2), lone = answers({4e5}, 0.04, 2);
  screen::WallHistory history(2, field, lone, 3600);
  const std::vector<screen::Pack> heat{{{10, 20}}, {{30, 40}}};  // bore by bore
  for (int hour = 0; hour < 300; ++hour) history.advance(heat);
  const double time = 300 * 3600.0;
  const auto grown = [&](const screen::WallAnswers& of) {
    double sum = 0;
    for (std::size_t j = 0; j < of.time_constants.size(); ++j)
      sum -= of.amplitudes[0][j] * std::expm1(-time / of.time_constants[j]);
    return sum;
  };
  CHECK(history.rise()[0].values[0] == Approx(10 * grown(lone) + 20 * (grown(field) - grown(lone))).epsilon(1e-9));
  CHECK(history.rise()[1].values[1] == Approx(40 * grown(lone) + 30 * (grown(field) - grown(lone))).epsilon(1e-9));
}

TEST_CASE("What walls remember by recursion is the sum over all hours so far, to round-off") {
  const std::vector<response::Exponential> terms = {{900, 0.02}, {4e4, 0.05}, {3e6, 0.1}, {8e8, 0.3}};
  const response::ExponentialResponse u{0, terms};
  const screen::WallAnswers wall{{0}, {900, 4e4, 3e6, 8e8}, {{0.02, 0.05, 0.1, 0.3}}, 0};
  screen::WallHistory superposition(1, wall, {}, 3600);
  std::vector<double> heat;
  unsigned state = 1;
  for (int hour = 0; hour < 400; ++hour) {
    state = state * 1664525U + 1013904223U;
    heat.push_back(static_cast<double>(state >> 16) / 1000 - 30);
    superposition.advance({screen::Pack{{heat.back()}}});
  }
  const auto exact = [&](double hours) {
    double sum = 0;
    for (std::size_t h = 0; h < heat.size(); ++h) {
      const double since = hours - static_cast<double>(h);
      sum += heat[h] * (u.after(3600 * since) - u.after(3600 * (since - 1)));
    }
    return sum;
  };
  CHECK(superposition.rise()[0].values[0] == Approx(exact(400)).epsilon(1e-12));
  CHECK(superposition.history_term()[0].values[0] == Approx(exact(401)).epsilon(1e-12));
}
