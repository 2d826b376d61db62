// Source: finite line sources on segments (Claesson & Javed 2011; Cimmino & Bernier 2014) in ground that is warmer
// below, by validation/reference_solutions/deep_bore.py
#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>

#include "engine/base/calendar.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/isothermal_field.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

using Row = std::map<std::string, std::string>;

double number(const Row& row, const char* name) {
  return std::stod(row.at(name));
}

void compare(const std::vector<Row>& rows, validation::Claim& inlets, validation::Claim& halves) {
  const Row& made = rows.front();
  const double length = number(made, "length"), gradient = number(made, "gradient"), conductivity = 2;
  const double heat = number(made, "per_metre") * length;
  validation::IsothermalField field({.layers = {{std::numeric_limits<double>::infinity(), "rock", {conductivity, 2e6}}},
                                     .bores = {{0, 0, 2, length}},
                                     .radius = 0.075,
                                     .resistance = 0.1,
                                     .heat = heat == 0 ? 1e-6 : heat,  // parts of the heat need some
                                     .years = 25,
                                     .heat_rate = number(made, "heat_rate"),
                                     .internal = 1e6,
                                     .heat_flow = gradient * conductivity});
  std::vector<double> times;
  for (const Row& row : rows) times.push_back(number(row, "days") * seconds_per_day);
  std::size_t next = 0;
  const double span = gradient * length;
  field.march(times, [&](double) {
    const Row& row = rows[next++];
    const std::string at = fmt::format("{:g} m, {} W/m, {} W/K, {} days", length, row.at("per_metre"),
                                       row.at("heat_rate"), row.at("days"));
    const double change = std::max(span, std::abs(number(row, "inlet") - span / 2));
    inlets.absolute(at + " [K]", number(row, "inlet"), field.inlet(), 0.003 * change);
    const double lower = field.share(0, 2 + length / 2, 2 + length) * (heat == 0 ? 1e-6 : heat);
    halves.absolute(at + " [W]", number(row, "lower"), lower, 0.005 * std::max(std::abs(heat), 1000.0));
  });
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  const std::string source =
      "finite line sources on segments: Claesson & Javed 2011, ASHRAE Transactions 117(2); Cimmino & Bernier 2014; "
      "validation/reference_solutions/deep_bore.csv";
  const std::string setup =
      "bores of 200 and 300 m in ground of 30 and 45 K a km, fluid that begins to flow at time 0 without load or with "
      "25 and 30 W/m drawn, streams that exchange nothing, R_b 0.1 K m/W, k 2 W/(m K), rho c 2 MJ/(m3 K), the engine's "
      "own grid and undisturbed column; after 30 days to 25 years";
  auto& inlets =
      check.claim({"deep-bore-inlet", "a deep bore in ground that is warmer below answers as line sources say",
                   validation::Origin::computed, source, "inlet above the surface's temperature; " + setup,
                   "0.3 % of the greater of its change and of the ground's span along the bore"});
  auto& halves =
      check.claim({"deep-bore-lower-half", "warmer ground below gives the more heat, and less as years go by",
                   validation::Origin::computed, source, "heat that the lower half gives off; " + setup,
                   "0.5 % of the bore's heat, or of 1 kW where there is no load"});
  std::map<std::string, std::vector<Row>> cases;
  for (const Row& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/deep_bore.csv"))
    cases[row.at("length") + row.at("per_metre") + row.at("heat_rate")].push_back(row);
  for (const auto& [name, rows] : cases) compare(rows, inlets, halves);
  return check.finish();
}
