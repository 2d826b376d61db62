// Source: Claesson & Javed 2011, ASHRAE Transactions 117(2); Eskilson 1987 for the scales
#include <fmt/format.h>

#include <cmath>
#include <map>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/uniform_bore.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

/// What a cylinder of uniform heat stands above a line at its own radius in g, for late times: its wall tends to
/// L + (L + 1)/(2 Fo) of q'/(4 pi k), L = ln(4 Fo) - gamma, the line to L + 1/(4 Fo). Carslaw & Jaeger 1959, 13.5 [from
/// memory]; within 3 % of tests/reference/infinite_cylinder.csv at Fo = 1000.
double cylinder_over_line(double fo) {
  const double log = std::log(4 * fo) - std::numbers::egamma;
  return (2 * log + 1) / (8 * fo);
}

}  // namespace

int main(int argc, char** argv) {
  const double h = 100, k = 2.0;
  const model::Solid rock{k, 2e6};
  const double ts = h * h / (9 * rock.diffusivity());
  const double radius = 0.0005 * h, top = 0.02 * h;
  validation::Check check(argc, argv, validation::Topic::ground);
  const std::string source =
      "Claesson & Javed 2011, ASHRAE Transactions 117(2); tests/reference/finite_line_source.csv";
  auto& at_wall = check.claim({"finite-line-wall",
                               "the wall of a bore that gives off uniform heat warms as the finite line source says",
                               validation::Origin::computed, source,
                               "g = 2 pi k rise/q', mean over 100 m of bore, D/H 0.02, -6 <= ln(t/ts) <= 1; the "
                               "reference is the line and what a "
                               "cylinder stands above a line of its radius at first, 0.05 % at ln(t/ts) = -6 (Carslaw "
                               "& Jaeger 1959, 13.5, late "
                               "times [from memory]); the engine's own rings and layers",
                               "0.1 %, as the reference's README asks of a march at the wall"});
  auto& beyond =
      check.claim({"finite-line-neighbours", "the ground where neighbours stand warms as the finite line source says",
                   validation::Origin::computed, source,
                   "g from 1 m on where g > 0.3, mean over the bore's depth, as neighbours take it up",
                   "0.5 %, as the reference's README asks of a march at neighbours"});
  // Edges far beyond the longest time's reach; otherwise the grid that the engine chooses.
  const double reach = std::sqrt(4 * rock.diffusivity() * ts * std::exp(1.0));
  const int rings = static_cast<int>(std::ceil(std::log(5 * reach / radius) / std::log(assembly::ring_ratio)));
  validation::UniformBore bore({radius, 5 * reach, rings, 0.5, 1.2, 8, 4 * reach}, rock, {top, top + h});

  std::map<double, std::vector<std::map<std::string, std::string>>> by_time;
  for (const auto& row : reference_solutions::reference_table("finite_line_source.csv")) {
    const double x = std::stod(row.at("ln_t_over_ts"));
    if (x >= -6 && x <= 1 && std::stod(row.at("D_over_H")) == 0.02) by_time[ts * std::exp(x)].push_back(row);
  }
  std::vector<double> times;
  for (const auto& [time, rows] : by_time) times.push_back(time);
  validation::Traces traces;
  bore.march(times, 60, 86400, [&](double time) {
    for (const auto& row : by_time[time]) {
      const double r = std::stod(row.at("r_over_H")) * h;
      const bool wall = r == radius;
      const double fo = rock.diffusivity() * time / (radius * radius);
      const double g = std::stod(row.at("g")) + (wall ? cylinder_over_line(fo) : 0.0);
      if (!wall && (r < 1 || g < 0.3)) continue;
      const double ours = 2 * std::numbers::pi * k * (wall ? bore.at_wall() : bore.at_distance(r));
      if (wall || r == 3 || r == 10) {
        traces.add(wall ? "wall" : fmt::format("{:g} m off", r), std::stod(row.at("ln_t_over_ts")), g, ours);
      }
      const std::string at = fmt::format("r = {:.3g} m, ln(t/ts) = {}", r, row.at("ln_t_over_ts"));
      if (wall) {
        at_wall.relative(at, g, ours, 0.001);
      } else {
        beyond.relative(at, g, ours, 0.005);
      }
    }
  });
  at_wall.plot(traces.on({"Rise at the wall and beside it", "ln(t/ts)", "g = 2 pi k rise/q'", false, false, {}}));
  return check.finish();
}
