#include "validation/bore_section/section.hpp"
#include <Eigen/Eigenvalues>
#include <cmath>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "engine/bore/loop_type.hpp"
#include "engine/march/growing_steps.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/observe.hpp"
#include "validation/harness/fixed_flow_march.hpp"
#include "validation/harness/uniform_bore.hpp"

namespace stillground::validation {

namespace {

double disc(double radius) {
  return std::numbers::pi * radius * radius;
}

double grout_capacity(const Section& s) {
  return s.grout.heat_capacity * (disc(s.bore_radius) - s.legs * disc(s.pipe_outer_radius));
}

double pipe_capacity(const Section& s) {
  return s.pipe.heat_capacity * s.legs * (disc(s.pipe_outer_radius) - disc(s.pipe_inner_radius));
}

model::Bore bore_of(const Section& s, const model::Loop& loop) {
  model::Bore bore;
  bore.diameter = 2 * s.bore_radius;
  bore.loop = loop;
  bore.pipe = {
      "", 2 * s.pipe_outer_radius, s.pipe_outer_radius - s.pipe_inner_radius, s.pipe.conductivity, s.pipe.heat_capacity,
      0};
  bore.grout = {"", s.grout};
  return bore;
}

/// The network as a run makes it, with as much fluid in the streams as the section says.
bore::Network network_of(const Section& s, const model::Loop& loop) {
  const model::Bore bore = bore_of(s, loop);
  const bore::LoopType& type = bore::loop_type(loop);
  const auto modes =
      type.resistances(bore, s.ground.conductivity, {s.film_resistance, s.film_resistance, s.film_resistance});
  const std::size_t streams = 2 * type.passes(loop);
  bore::Capacities capacities{grout_capacity(s) + pipe_capacity(s), {}};
  for (std::size_t n = 0; n < streams; ++n) {
    capacities.stream.at(n) = s.fluid_storage * s.legs / static_cast<double>(streams);
  }
  return type.network(loop, modes, capacities, s.ground.heat_capacity * disc(s.bore_radius));
}

/// Ten kilometres of bore, so that in days the ends change nothing in its mean; on the engine's own rings.
constexpr ground::DepthInterval endless{2, 10002};
constexpr double length = endless.toe - endless.top;

march::Problem endless_bore(const Section& s) {
  const double outer = 300;
  const int rings = static_cast<int>(std::ceil(std::log(outer / s.bore_radius) / std::log(assembly::ring_ratio)));
  return lone_bore({s.bore_radius, outer, rings, 2, 1.3, 1000, 60}, s.ground, endless);
}

/// So much flow that the fluid has one temperature.
march::FlowRegime even_flow(const Section& s, const march::Problem& problem) {
  return {1, 1e9, {network(s)}, std::vector<std::size_t>(problem.nz(), 0)};
}

}  // namespace

Section read_section(const std::map<std::string, std::string>& row) {
  const auto value = [&](const char* name) { return std::stod(row.at(name)); };
  return {std::stoi(row.at("legs")),
          value("bore_radius"),
          value("offset"),
          value("pipe_outer_radius"),
          value("pipe_inner_radius"),
          {value("grout_conductivity"), value("grout_heat_capacity")},
          {value("pipe_conductivity"), value("pipe_heat_capacity")},
          {value("ground_conductivity"), value("ground_heat_capacity")},
          value("film_resistance"),
          value("fluid_storage")};
}

bore::Network network(const Section& section) {
  const double apart = 2 * section.offset;
  if (section.legs == 2) return network_of(section, model::SingleU{apart});
  if (section.legs == 4) {
    return network_of(section, model::DoubleU{apart, model::DoubleU::Connection::parallel, false});
  }
  // With both streams at one temperature the inner pipe may be any.
  const double outer = section.pipe_inner_radius;
  return network_of(section, model::Coaxial{{"", outer, 0.1 * outer, 0.4, 2e6, 0}, model::Coaxial::Down::annulus});
}

bore::Network series_network(const Section& section) {
  return network_of(section, model::DoubleU{2 * section.offset, model::DoubleU::Connection::series, false});
}

bore::Network crossed_network(const Section& section) {
  return network_of(section, model::DoubleU{2 * section.offset, model::DoubleU::Connection::parallel, true});
}

bore::Network inner_stream_network(const std::map<std::string, std::string>& row) {
  const auto value = [&](const char* name) { return std::stod(row.at(name)); };
  const double outer = value("outer"), inner = value("inner");
  model::Bore bore;
  bore.diameter = 0.15;
  bore.pipe = {"", 0.11, 0.0066, 0.42, 2.1e6, 0};
  bore.grout = {"", {1.6, 3e6}};
  bore.loop = model::Coaxial{{"", 2 * outer, outer - inner, value("conductivity"), value("heat_capacity"), 0},
                             model::Coaxial::Down::annulus};
  const bore::Films films{value("film_pipe"), value("film_inner"), 0.01};
  constexpr double fluid = 4.15e6;
  const bore::LoopType& type = bore::loop_type(bore.loop);
  return type.network(bore.loop, type.resistances(bore, 2, films), type.capacities(bore, fluid), 4e4);
}

std::vector<SectionAnswer> even_answer(const Section& section, double heat, const std::vector<double>& times) {
  const march::Problem problem = endless_bore(section);
  const march::FlowRegime regime = even_flow(section, problem);
  const march::Forcing forcing{{0, 0, 0, heat * length}, &regime};
  march::GrowingSteps steps(problem, {}, forcing, simulation::initial_state(problem));
  std::size_t k = 0;
  while (problem.grid.z[k] < (endless.top + endless.toe) / 2) ++k;
  const double wall = march::wall_to_first_node(problem.grid, section.ground.conductivity);
  std::vector<SectionAnswer> answers;
  steps.march(times, 1, 3600, [&](double) {
    const march::StateLayout layout(problem);
    const auto at = [&](std::size_t row) { return steps.state().y[row * layout.row() + k]; };
    const double through = steps.wall_heat()[k];
    answers.push_back({(at(layout.down_row()) + at(layout.up_row())) / 2, at(layout.ground_row()) + through * wall,
                       (at(layout.inner_row()) + at(layout.outer_row())) / 2,
                       grout_capacity(section) / (grout_capacity(section) + pipe_capacity(section)), through});
  });
  return answers;
}

std::vector<double> odd_answer(const bore::Network& network, std::size_t mode, double heat,
                               const std::vector<double>& times) {
  const bore::Mode& odd = network.modes.at(mode);
  // C dT/dt = b - G T of fluid and two nodes, symmetric in sqrt(C) T: by its eigenvectors, exactly.
  const double in = 1 / odd.inner, middle = 1 / odd.middle, out = 1 / odd.outer;
  Eigen::Matrix3d conductance;
  conductance << in, -in, 0, -in, in + middle, -middle, 0, -middle, middle + out;
  const Eigen::Vector3d root =
      Eigen::Vector3d(network.capacity[0], odd.inner_capacity, odd.outer_capacity).cwiseSqrt().cwiseInverse();
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> modes(root.asDiagonal() * conductance * root.asDiagonal());
  const Eigen::Vector3d drive = modes.eigenvectors().transpose() * Eigen::Vector3d(heat * root[0], 0, 0);
  std::vector<double> fluid;
  for (const double time : times) {
    Eigen::Vector3d state;
    for (int i = 0; i < 3; ++i)
      state[i] = -drive[i] * std::expm1(-modes.eigenvalues()[i] * time) / modes.eigenvalues()[i];
    fluid.push_back(root[0] * (modes.eigenvectors() * state)[0]);
  }
  return fluid;
}

std::vector<double> hourly_means(const Section& section, double heat, int hours) {
  const march::Problem problem = endless_bore(section);
  const march::FlowRegime regime = even_flow(section, problem);
  FixedFlowMarch march(problem, {});
  std::vector<double> means;
  for (int hour = 0; hour < hours; ++hour) {
    const auto mean = march.hour(heat * length, regime);
    means.push_back((mean.eft + mean.lft) / 2);
  }
  return means;
}

}  // namespace stillground::validation
