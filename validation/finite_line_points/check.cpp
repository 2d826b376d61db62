// Source: the finite line source at a point (Eskilson 1987, Claesson & Javed 2011)
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "engine/base/calendar.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/uniform_bore.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

constexpr double bore_radius = 0.075, conductivity = 2;
constexpr ground::DepthInterval reach{2, 102};

/// g at one depth: cubic through the middles of four layers, the surface's zero among them near the surface. At the
/// wall the four lie on one side of the bore's end, where the rise breaks off.
double g_at(const validation::UniformBore& bore, double r, double z) {
  const auto& grid = bore.problem().grid;
  std::size_t first = 0, past = grid.nz();
  if (r == bore_radius && z > reach.toe) {
    while (grid.z[first] < reach.toe) ++first;
  } else if (r == bore_radius) {
    while (grid.z[first] < reach.top) ++first;
    while (grid.z[past - 1] > reach.toe) --past;
  }
  std::vector<double> depth, rise;
  if (first == 0) {
    depth.push_back(0);
    rise.push_back(0);
  }
  for (std::size_t k = first; k < past; ++k) {
    depth.push_back(grid.z[k]);
    rise.push_back(r == bore_radius ? bore.at_wall(k) : bore.at_distance(r, k));
  }
  const auto below = static_cast<std::size_t>(std::upper_bound(depth.begin(), depth.end(), z) - depth.begin());
  const std::size_t start = std::clamp<std::size_t>(below, 2, depth.size() - 2) - 2;
  double sum = 0;
  for (std::size_t i = start; i < start + 4; ++i) {
    double weight = 1;
    for (std::size_t j = start; j < start + 4; ++j) {
      if (j != i) weight *= (z - depth[j]) / (depth[i] - depth[j]);
    }
    sum += weight * rise[i];
  }
  return 2 * std::numbers::pi * conductivity * sum;
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::ground);
  const std::string source =
      "finite line source at a point: Eskilson 1987, Zeng, Diao & Fang 2002, Claesson & Javed 2011; "
      "tests/reference/finite_line_points.csv";
  const std::string setup =
      "g = 2 pi k rise/q' after 1, 5 and 25 years of uniform heat from a bore between 2 and 102 m, k 2 W/(m K), a 1e-6 "
      "m2/s; the engine's own rings and layers, read as neighbours and maps are; the wall near the bore's upper end "
      "(depths 1 and 2 m), where the rise changes within centimetres, is left out; ";
  auto& large =
      check.claim({"line-points-warm", "the ground warms along the depth and to the side as a finite line says",
                   validation::Origin::computed, source, setup + "where g > 0.3",
                   "0.5 %, as the reference's README asks of a march"});
  auto& small =
      check.claim({"line-points-cool", "where the bore's heat hardly reaches the ground warms no more than so",
                   validation::Origin::computed, source, setup + "where g <= 0.3",
                   "0.003 in g (0.01 K at 50 W/m), as the reference's README asks of a march"});
  const model::Solid rock{conductivity, 2e6};
  const double far = 4 * std::sqrt(4 * rock.diffusivity() * 25 * seconds_per_year);
  const int rings = static_cast<int>(std::ceil(std::log(far / bore_radius) / std::log(assembly::ring_ratio)));
  validation::UniformBore bore({bore_radius, far, rings, 0.5, 1.2, 8, far}, rock, reach);

  std::map<std::pair<double, double>, validation::WorstCase> warm, cool;
  validation::Traces traces;
  const auto rows = reference_solutions::reference_table("finite_line_points.csv");
  std::vector<double> times;
  for (const double years : {1, 5, 25}) times.push_back(years * seconds_per_year);
  bore.march(times, 60, 43200, [&](double time) {
    for (const auto& row : rows) {
      const double years = std::stod(row.at("years"));
      const double r = std::stod(row.at("r")), z = std::stod(row.at("z")), g = std::stod(row.at("g"));
      if (std::abs(years * seconds_per_year - time) > 1 || (r == bore_radius && z < 3)) continue;
      const double ours = g_at(bore, r, z);
      const std::string where = fmt::format("{:g} years", years);
      if (g > 0.3) {
        warm[{r, z}].compare(where, g, ours);
      } else {
        cool[{r, z}].compare_absolute(where, g, ours);
      }
      if (years == 25 && r > bore_radius) traces.add(fmt::format("{:g} m off", r), z, g, ours);
    }
  });
  for (const auto& [at, worst] : warm) {
    const std::string where = fmt::format("r {:g} m, z {:g} m", at.first, at.second);
    if (at.first == bore_radius && std::abs(at.second - reach.toe) < 5) {
      worst.known_row(large, where, 0.005, 0.012,
                      "the wall and the axis below it by the toe: the heat breaks off within the bore's radius, layers "
                      "there are 0.5 m tall");
    } else {
      worst.row(large, where, 0.005);
    }
  }
  for (const auto& [at, worst] : cool) worst.row(small, fmt::format("r {:g} m, z {:g} m", at.first, at.second), 0.003);
  large.plot(traces.on({"Rise along the depth after 25 years", "depth [m]", "g = 2 pi k rise/q'", false, false, {}}));
  return check.finish();
}
