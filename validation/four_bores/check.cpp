// Source: finite elements in 3-D (FreeFem++), by validation/reference_solutions/four_bores.py
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <sstream>

#include "validation/harness/claim.hpp"
#include "validation/harness/isothermal_field.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

using Row = std::map<std::string, std::string>;

/// "name:x:y:top:length;..." as in the reference solution's table; the bores by name.
std::pair<std::vector<model::BoreSite>, std::map<std::string, std::size_t>> bores_from(const std::string& text) {
  std::vector<model::BoreSite> bores;
  std::map<std::string, std::size_t> names;
  std::stringstream all(text);
  for (std::string one; std::getline(all, one, ';');) {
    std::stringstream fields(one);
    std::string name;
    std::getline(fields, name, ':');
    model::BoreSite bore;
    char colon = 0;
    fields >> bore.x >> colon >> bore.y >> colon >> bore.top >> colon >> bore.depth;
    names[name] = bores.size();
    bores.push_back(bore);
  }
  return {bores, names};
}

struct Claims {
  validation::Claim& fluid;
  validation::Claim& wall;
  validation::Claim& ground;
};

Claims claims_for(validation::Check& check, const Row& made) {
  const std::string source =
      "FreeFem++ 4.11 (plan) and scipy, quadratic elements on prisms, bores as real holes; "
      "validation/reference_solutions/four_bores.csv, with its mesh study";
  const std::string setup = fmt::format(
      "layers {} (bottom [m]:k [W/(m K)]:rho c [J/(m3 K)]); bores {} (x:y:top:length [m]), {} W in all from t = 0, one "
      "fluid temperature, R_b 0.1 K m/W, no heat capacity in the bores; surface held; the engine's own grid for 10 "
      "years",
      made.at("layers"), made.at("bores"), made.at("heat"));
  return {
      check.claim({"four-bores-fluid",
                   "four bores of unequal depth in layered ground warm their fluid as 3-D finite elements say",
                   validation::Origin::library, source, "rise of the fluid [K]; " + setup,
                   "0.3 %, what the engine states for a field's rise, and the elements' own error"}),
      check.claim({"four-bores-wall", "four bores of unequal depth share the heat as 3-D finite elements say",
                   validation::Origin::library, source,
                   "rise of each bore's wall, mean over its depth [K]; part of the heat that it gives off; " + setup,
                   "0.3 % of the wall's rise, as for the fluid, and 0.001 of the whole heat, each with the elements' "
                   "own error"}),
      check.claim({"four-bores-ground", "the ground between bores of unequal depth warms as 3-D finite elements say",
                   validation::Origin::library, source,
                   "rise of the ground over that of the fluid, worst of all times, between the bores, 1 m beside the "
                   "shallow one and below it; " +
                       setup,
                   "0.003 of the fluid's rise: 0.5 % of what neighbours add up to, about 0.6 of it, and the elements' "
                   "own error"})};
}

/// The rows of one time, by figure.
void compare(const std::vector<Row>& rows, const validation::IsothermalField& field,
             const std::map<std::string, std::size_t>& bores, Claims& claims,
             std::map<std::string, validation::WorstCase>& grounds, validation::Traces& traces) {
  double fluid = 0;
  for (const auto& row : rows) {
    const double days = std::stod(row.at("days")), reference = std::stod(row.at("value"));
    const double error = std::stod(row.at("error"));
    const std::string when = fmt::format("{:g} days", days), where = row.at("where");
    if (row.at("figure") == "fluid") {
      fluid = reference;
      claims.fluid.relative(when, reference, field.fluid(), 0.003 + error / reference);
      traces.add("fluid", days, reference, field.fluid());
    } else if (row.at("figure") == "wall") {
      const double ours = field.mean_wall(bores.at(where));
      claims.wall.relative(fmt::format("wall, {}, {}", where, when), reference, ours, 0.003 + error / reference);
      traces.add("wall, " + where, days, reference, ours);
    } else if (row.at("figure") == "share") {
      claims.wall.absolute(fmt::format("part of the heat, {}, {}", where, when), reference,
                           field.share(bores.at(where)), 0.001 + error);
    } else {
      const auto colon = where.find(':');
      const double ours = field.ground(std::stod(where.substr(0, colon)), std::stod(where.substr(colon + 1)),
                                       std::stod(row.at("depth")));
      grounds[fmt::format("x:y {}, {} m deep", where, row.at("depth"))].compare_absolute(when, reference / fluid,
                                                                                         ours / fluid);
    }
  }
}

/// The largest error of the elements' ground temperatures over the fluid's rise at that time.
double ground_error(const std::map<double, std::vector<Row>>& at) {
  double largest = 0;
  for (const auto& [time, rows] : at) {
    const double fluid = std::stod(rows.front().at("value"));
    for (const auto& row : rows) {
      if (row.at("figure") == "ground") largest = std::max(largest, std::stod(row.at("error")) / fluid);
    }
  }
  return largest;
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  const Row made = reference_solutions::read_table(REFERENCE_SOLUTIONS "/four_bore_case.csv").front();
  const auto [bores, names] = bores_from(made.at("bores"));
  validation::IsothermalField field({validation::layers_from(made.at("layers")), bores, std::stod(made.at("radius")),
                                     std::stod(made.at("resistance")), std::stod(made.at("heat")), 10});
  std::map<double, std::vector<Row>> at;
  for (const auto& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/four_bores.csv"))
    at[std::stod(row.at("days")) * 86400].push_back(row);
  std::vector<double> times;
  for (const auto& [time, rows] : at) times.push_back(time);

  Claims claims = claims_for(check, made);
  std::map<std::string, validation::WorstCase> grounds;
  validation::Traces traces;
  field.march(times, [&](double time) { compare(at.at(time), field, names, claims, grounds, traces); });
  for (const auto& [place, worst] : grounds) worst.row(claims.ground, place, 0.003 + ground_error(at));
  claims.fluid.plot(traces.on({"Rise of fluid and walls", "days", "rise [K]", true, false, {}}));
  return check.finish();
}
