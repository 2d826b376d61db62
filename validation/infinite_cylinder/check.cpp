// Source: Carslaw & Jaeger 1959, Ingersoll 1954 (the infinite cylinder of uniform heat)
#include <fmt/format.h>

#include <cmath>
#include <map>

#include "engine/assembly/assembly.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/uniform_bore.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  const model::Solid rock{2.0, 2e6};
  const double radius = 0.075;
  validation::Check check(argc, argv, validation::Topic::ground);
  const std::string source = "Carslaw & Jaeger 1959, Ingersoll 1954; tests/reference/infinite_cylinder.csv";
  auto& at_wall =
      check.claim({"cylinder-wall", "in its first hours a bore's wall answers as the infinite cylinder",
                   validation::Origin::computed, source,
                   "G = k rise/q' at mid-depth of a 120 m bore of uniform heat, Fo = a t/r_b^2 from 2 to 10 000",
                   "0.3 %, as the reference's README asks of a march at the wall from Fo = 2"});
  auto& beyond = check.claim({"cylinder-beyond", "the ground about a bore answers at first as the infinite cylinder",
                              validation::Origin::computed, source,
                              "G at p = r/r_b where G > 0.01, interpolated as neighbours are",
                              "0.5 %, as the reference's README asks of a march beyond the wall"});
  const int rings = static_cast<int>(std::ceil(std::log(300 / radius) / std::log(assembly::ring_ratio)));
  validation::UniformBore bore({radius, 300, rings, 0.5, 1.2, 8, 60}, rock, {2, 122});
  const auto middle = [&] {
    const auto& grid = bore.problem().grid;
    std::size_t k = 0;
    while (grid.z[k] < 62) ++k;
    return k;
  }();

  std::map<double, std::vector<std::map<std::string, std::string>>> by_time;
  for (const auto& row : reference_solutions::reference_table("infinite_cylinder.csv")) {
    const double fo = std::stod(row.at("Fo"));
    if (fo >= 2 && fo <= 1e4) by_time[fo * radius * radius / rock.diffusivity()].push_back(row);
  }
  std::vector<double> times;
  for (const auto& [time, rows] : by_time) times.push_back(time);
  validation::Traces traces;
  bore.march(times, 30, 86400, [&](double time) {
    for (const auto& row : by_time[time]) {
      const double p = std::stod(row.at("p"));
      const double g = std::stod(row.at("G"));
      if (p != 1 && (g < 0.01 || p * radius > 30)) continue;
      const double ours = 2.0 * (p == 1 ? bore.at_wall(middle) : bore.at_distance(p * radius, middle));
      if (p == 1 || p == 2 || p == 5) traces.add(fmt::format("p = {:g}", p), std::stod(row.at("Fo")), g, ours);
      const std::string at = fmt::format("Fo = {}, p = {:g}", row.at("Fo"), p);
      (p == 1 ? at_wall : beyond).relative(at, g, ours, p == 1 ? 0.003 : 0.005);
    }
  });
  at_wall.plot(traces.on({"The first hours and days", "Fo = a t/r_b^2", "G = k rise/q'", true, false, {}}));
  return check.finish();
}
