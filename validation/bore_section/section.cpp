#include "validation/bore_section/section.hpp"
#include "engine/march/growing_steps.hpp"

#include <Eigen/Eigenvalues>
#include <cmath>
#include <numbers>

#include "engine/march/radial.hpp"
#include "engine/materials/film.hpp"
#include "engine/run/assembly.hpp"
#include "engine/run/observe.hpp"
#include "validation/rig/fixed_flow_march.hpp"
#include "validation/rig/uniform_bore.hpp"

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

bore::Network single_network(const Section& s) {
  model::Bore bore;
  bore.diameter = 2 * s.bore_radius;
  bore.loop = model::SingleU{2 * s.offset};
  bore.pipe = {
      "", 2 * s.pipe_outer_radius, s.pipe_outer_radius - s.pipe_inner_radius, s.pipe.conductivity, s.pipe.heat_capacity,
      0};
  bore.grout = {"", s.grout};
  const auto made =
      bore::single_u_resistance(bore, model::SingleU{2 * s.offset}, s.ground.conductivity, s.film_resistance);
  return bore::make_network({made.legs.bore, made.legs.internal, made.shares.even, made.shares.odd,
                             grout_capacity(s) + pipe_capacity(s), s.fluid_storage, made.shares.even_spread,
                             made.shares.odd_wall, s.ground.heat_capacity * disc(s.bore_radius)});
}

bore::Network double_network(const Section& s) {
  bore::BoreSection section{s.bore_radius, s.grout.conductivity, s.ground.conductivity, {}};
  const double leg = s.film_resistance + materials::pipe_wall_resistance(2 * s.pipe_inner_radius,
                                                                         2 * s.pipe_outer_radius, s.pipe.conductivity);
  for (int n = 0; n < s.legs; ++n) {
    const auto centre = std::polar(s.offset, 2 * std::numbers::pi * n / s.legs);
    section.pipes.push_back({centre.real(), centre.imag(), s.pipe_outer_radius, leg});
  }
  const auto multipoles = bore::solve_multipoles(section);
  const auto stored = bore::even_storage(
      multipoles, {s.pipe_inner_radius, s.film_resistance, s.grout.heat_capacity, s.pipe.heat_capacity});
  const double resistance = multipoles.resistance.row(0).sum() / s.legs;
  return bore::make_network({resistance, 4 * resistance, stored.mean, stored.mean, grout_capacity(s) + pipe_capacity(s),
                             s.fluid_storage * s.legs / 2, stored.spread});
}

/// Ten kilometres of bore, so that in days the ends change nothing in its mean; on the engine's own rings.
constexpr ground::Reach endless{2, 10002};
constexpr double length = endless.toe - endless.top;

march::Problem endless_bore(const Section& s) {
  const double outer = 300;
  const int rings = static_cast<int>(std::ceil(std::log(outer / s.bore_radius) / std::log(run::ring_ratio)));
  auto problem = lone_bore({s.bore_radius, outer, rings, 2, 1.3, 1000, 60}, s.ground, endless);
  problem.step = 1800;
  return problem;
}

/// So much flow that the fluid has one temperature.
march::FlowRegime even_flow(const Section& s, const march::Problem& problem) {
  return {1, 1e9, std::vector<bore::Network>(problem.nz(), network(s))};
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
  return section.legs == 2 ? single_network(section) : double_network(section);
}

std::vector<SectionAnswer> even_answer(const Section& section, double heat, const std::vector<double>& times) {
  const march::Problem problem = endless_bore(section);
  const march::FlowRegime regime = even_flow(section, problem);
  const march::Task task{{0, 0, 0, heat * length}, &regime};
  march::GrowingSteps steps(problem, task, run::initial_state(problem));
  std::size_t k = 0;
  while (problem.grid.z[k] < (endless.top + endless.toe) / 2) ++k;
  const double wall = march::wall_to_first_node(problem.grid, section.ground.conductivity);
  std::vector<SectionAnswer> answers;
  steps.march(times, 1, 3600, [&](double) {
    const auto at = [&](std::size_t row) { return steps.state().y[row * problem.row() + k]; };
    const double through = steps.wall_heat()[k];
    answers.push_back({(at(march::rows::down) + at(march::rows::up)) / 2, at(march::rows::ground) + through * wall,
                       (at(march::rows::even_inner) + at(march::rows::even_outer)) / 2,
                       grout_capacity(section) / (grout_capacity(section) + pipe_capacity(section)), through});
  });
  return answers;
}

std::vector<double> odd_answer(const Section& section, double heat, const std::vector<double>& times) {
  const bore::Network made = network(section);
  const bore::Mode& odd = made.odd;
  // C dT/dt = b - G T of fluid and two nodes, symmetric in sqrt(C) T: by its eigenvectors, exactly.
  const double in = 1 / odd.inner, middle = 1 / odd.middle, out = 1 / odd.outer;
  Eigen::Matrix3d conductance;
  conductance << in, -in, 0, -in, in + middle, -middle, 0, -middle, middle + out;
  const Eigen::Vector3d root =
      Eigen::Vector3d(made.fluid_capacity, odd.inner_capacity, odd.outer_capacity).cwiseSqrt().cwiseInverse();
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
  FixedFlowMarch march(problem);
  std::vector<double> means;
  for (int hour = 0; hour < hours; ++hour) {
    const auto mean = march.hour(heat * length, regime);
    means.push_back((mean.eft + mean.lft) / 2);
  }
  return means;
}

}  // namespace stillground::validation
