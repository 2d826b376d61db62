#include "validation/front_transit/plug_flow.hpp"

#include <limits>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::validation {

namespace {

march::Problem lone_problem(double depth) {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.0, 2.0e6}}};
  s.ground.undisturbed = model::MeanOverBore{0};
  s.bore.top = 2;
  s.bore.depth = depth;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Grid{1, 1, 6};
  s.flow = {0.3e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{1};
  s.run.years = 1;
  return assembly::assemble(s).problem;
}

march::FlowRegime without_exchange(const march::Problem& problem, double heat_rate, double capacity) {
  const bore::Network nothing = bore::make_network(bore::NetworkParts{.bore_resistance = 1e15,
                                                                      .internal_resistance = 4e15,
                                                                      .even_share = 0.5,
                                                                      .odd_share = 0.5,
                                                                      .grout_capacity = 1e3,
                                                                      .fluid_capacity = capacity});
  return {1, heat_rate, {nothing}, std::vector<std::size_t>(problem.nz(), 0)};
}

}  // namespace

PlugFlow::PlugFlow(const Make& make)
    : problem_(lone_problem(make.depth)),
      layout_(problem_),
      heat_rate_(make.mass_flow * make.specific_heat),
      capacity_(make.density * make.specific_heat * std::numbers::pi * make.inner_diameter * make.inner_diameter / 4),
      step_(make.step),
      regime_(without_exchange(problem_, heat_rate_, capacity_)),
      radial_(problem_, march::ars222::gamma * step_),
      bore_(problem_, problem_.groups[0], regime_, radial_, march::ars222::gamma * step_),
      y_(layout_.size(), 0.0),
      ambient_(layout_.row(), 0.0),
      work_(march::BoreElimination::work_size(layout_)),
      wall_heat_(layout_.row()) {}

void PlugFlow::solve(march::Vector& y) {
  radial_.eliminate(y.data(), y.data());
  bore_.eliminate(y.data(), y.data(), ambient_.data(), work_);
  bore_.substitute(1, y.data(), y.data(), work_, wall_heat_.data());
  radial_.substitute(y.data());
}

double PlugFlow::outlet(const march::Vector& y) const {
  return y[layout_.up_row() * layout_.row() + problem_.groups[0].first];
}

void PlugFlow::step() {
  const double gamma = march::ars222::gamma;
  march::Vector first = y_;
  solve(first);
  samples_.push_back({time_ + gamma * step_, (1 - gamma) * step_, outlet(first)});
  for (std::size_t i = 0; i < y_.size(); ++i) y_[i] += (1 - gamma) / gamma * (first[i] - y_[i]);
  solve(y_);
  time_ += step_;
  samples_.push_back({time_, gamma * step_, outlet(y_)});
}

double PlugFlow::stored() const {
  double sum = 0;
  for (std::size_t k = problem_.groups[0].first; k < problem_.groups[0].end; ++k) {
    const double streams = y_[layout_.down_row() * layout_.row() + k] + y_[layout_.up_row() * layout_.row() + k];
    sum += problem_.grid.height(k) * capacity_ * streams;
  }
  return sum;
}

std::vector<double> PlugFlow::cell_times() const {
  std::vector<double> times;
  for (std::size_t k = problem_.groups[0].first; k < problem_.groups[0].end; ++k) {
    times.push_back(capacity_ * problem_.grid.height(k) / heat_rate_);
  }
  return times;
}

}  // namespace stillground::validation
