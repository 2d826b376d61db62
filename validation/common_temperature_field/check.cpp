// Source: Cimmino & Bernier 2014 (segments, one fluid temperature), by
// validation/reference_solutions/segmented_line_sources.py
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <limits>
#include <map>
#include <sstream>

#include "engine/assembly/assembly.hpp"
#include "engine/march/growing_steps.hpp"
#include "engine/march/rates.hpp"
#include "engine/simulation/observe.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

/// "x:y:D:H;..." as in the reference solution's table.
std::vector<model::BoreSite> bores_from(const std::string& text) {
  std::vector<model::BoreSite> bores;
  std::stringstream all(text);
  for (std::string one; std::getline(all, one, ';');) {
    model::BoreSite bore;
    char colon = 0;
    std::stringstream(one) >> bore.x >> colon >> bore.y >> colon >> bore.top >> colon >> bore.depth;
    bores.push_back(bore);
  }
  return bores;
}

/// The reference solution's ground and bores; so much flow that the fluid has one temperature, as in the reference
/// solution.
model::Scenario scenario(const std::vector<model::BoreSite>& bores) {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.0, 2.0e6}}};
  s.ground.undisturbed = model::MeanOverBore{283.15};
  s.bore.top = bores.front().top;
  s.bore.depth = bores.front().depth;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.bore.resistance = model::MeasuredResistance{0.1, {}, {}};
  s.layout = model::Positions{bores};
  s.flow = {0.1, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  double length = 0;
  for (const auto& bore : bores) length += bore.depth;
  s.loads = model::ConstantGroundLoad{20 * length};
  s.run.years = 25;
  return s;
}

/// A case's name as an entry's id.
std::string id_of(std::string name) {
  std::replace_if(
      name.begin(), name.end(), [](unsigned char c) { return !std::isalnum(c); }, '-');
  std::transform(name.begin(), name.end(), name.begin(), [](unsigned char c) { return std::tolower(c); });
  return name;
}

void compare(const std::vector<std::map<std::string, std::string>>& rows, validation::Claim& claim) {
  const model::Scenario s = scenario(bores_from(rows.front().at("bores")));
  const assembly::Assembly assembly = assembly::assemble(s);
  assembly::FlowRegimes regimes(s, assembly.fluid, assembly.problem.grid);
  const march::Forcing forcing{assembly.loads.hour(0), &regimes.flowing(283.15).march};
  march::GrowingSteps steps(assembly.problem, assembly.multirate, forcing, simulation::initial_state(assembly.problem));
  std::vector<double> times;
  for (const auto& row : rows) times.push_back(std::stod(row.at("years")) * seconds_per_year);
  validation::Traces traces;
  std::size_t next = 0;
  steps.march(times, 600, 86400, [&](double) {
    const double ours = (steps.operating_point().eft + steps.operating_point().lft) / 2 - 283.15;
    claim.relative(fmt::format("{} years", rows[next].at("years")), std::stod(rows[next].at("rise")), ours, 0.003);
    traces.add("fluid", std::stod(rows[next].at("years")), std::stod(rows[next].at("rise")), ours);
    ++next;
  });
  claim.plot(traces.on({"Rise of the fluid", "years", "rise [K]", true, false, {}}));
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  std::map<std::string, std::vector<std::map<std::string, std::string>>> cases;
  for (const auto& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/common_temperature_fields.csv"))
    cases[row.at("case")].push_back(row);
  for (const auto& [name, rows] : cases) {
    compare(
        rows,
        check.claim(
            {"common-temperature-" + id_of(name),
             fmt::format("{}: a field at one fluid temperature warms as segmented line sources say", name),
             validation::Origin::computed,
             "Cimmino & Bernier 2014, Int. J. Heat Mass Transfer 70, 641-650 (segments, superposition; "
             "boundary of one common fluid temperature); validation/reference_solutions/common_temperature_fields.csv",
             "rise of the fluid [K] under 20 W/m of constant heat, R_b 0.1 K m/W, k 2 W/(m K), rho c 2 "
             "MJ/(m3 K); the engine's own grid, steps that grow to a day",
             "0.3 %: the reference solution's own 0.05 % (extrapolated in the number of segments), the march's 0.1 % "
             "at a wall and 0.5 % of a neighbour's part"}));
  }
  return check.finish();
}
