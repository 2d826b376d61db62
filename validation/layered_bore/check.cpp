// Source: finite elements (FreeFem++), by validation/reference_solutions/layered_bore.edp
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "validation/harness/claim.hpp"
#include "validation/harness/isothermal_field.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

using Rows = std::vector<std::map<std::string, std::string>>;

constexpr double radius = 0.075, resistance = 0.1, per_metre = 40;  // as the reference solution's table says

struct Claims {
  validation::Claim& fluid;
  validation::Claim& wall;
  validation::Claim& ground;
};

Claims claims_for(validation::Check& check, const std::string& name, const std::string& layers) {
  std::string id = name;
  std::replace(id.begin(), id.end(), ' ', '-');
  const std::string source =
      "FreeFem++ 4.11, axisymmetric quadratic elements; validation/reference_solutions/layered_bores.csv, with its "
      "mesh study";
  const std::string setup = fmt::format(
      "layers {} (bottom [m]:k [W/(m K)]:rho c [J/(m3 K)]); one bore, 40 W/m times its length from t = 0, one fluid "
      "temperature, R_b 0.1 K m/W, no heat capacity in the bore; surface held; the engine's own grid for 20 years",
      layers);
  const auto heading = [&](const std::string& what, const std::string& claim, const std::string& figures,
                           const std::string& tolerance) {
    return validation::Heading{"layered-bore-" + what + "-" + id,
                               name + ": " + claim,
                               validation::Origin::library,
                               source,
                               figures + "; " + setup,
                               tolerance};
  };
  return {
      check.claim(heading("fluid", "the fluid of a bore in layered ground warms as finite elements say",
                          "rise of the fluid [K]",
                          "0.3 %, what the engine states for a rise; the elements' own error is below 0.01 %")),
      check.claim(heading("wall", "the bore's wall warms and the layers share the heat as finite elements say",
                          "rise of the wall at depths [K]; part of the bore's heat that each layer takes",
                          "0.3 % of the wall's rise, as for the fluid; a layer's part within 0.001 of the whole heat, "
                          "so that no layer's heat is off by more than the whole answer may be; the elements' own "
                          "errors are below 0.02 % and 0.0001")),
      check.claim(heading("ground", "the layered ground beside a bore warms as finite elements say",
                          "rise of the ground over that of the fluid, worst of all times",
                          "0.002 of the fluid's rise: 0.5 % of a neighbour's answer, which stays below 0.4 of it; the "
                          "elements' own error is below 0.0005"))};
}

/// The rows of one time, by figure.
void compare(const Rows& rows, const validation::IsothermalField& field, Claims& claims,
             std::map<std::string, validation::WorstCase>& parts, std::map<std::string, validation::WorstCase>& grounds,
             validation::Traces& traces) {
  double fluid = 0;
  for (const auto& row : rows) {
    const double days = std::stod(row.at("days")), reference = std::stod(row.at("value"));
    const std::string when = days < 365 ? fmt::format("{:g} days", days) : fmt::format("{:g} years", days / 365);
    const std::string depth = row.at("depth");
    if (row.at("figure") == "fluid") {
      fluid = reference;
      claims.fluid.relative(when, reference, field.fluid(), 0.003);
      traces.add("fluid", days, reference, field.fluid());
    } else if (row.at("figure") == "wall") {
      const double ours = field.wall(0, std::stod(depth));
      const std::string at = fmt::format("{}, {} m deep", when, depth);
      claims.wall.relative(fmt::format("{}, {} m deep", when, depth), reference, ours, 0.003);
      traces.add(fmt::format("wall, {} m deep", depth), days, reference, ours);
    } else if (row.at("figure") == "share") {
      const auto dash = depth.find('-');
      const double ours = field.share(0, std::stod(depth.substr(0, dash)), std::stod(depth.substr(dash + 1)));
      parts[depth].compare_absolute(when, reference, ours);
    } else {
      const double distance = std::stod(row.at("distance"));
      grounds[fmt::format("{:g} m off, {} m deep", distance, depth)].compare_absolute(
          when, reference / fluid, field.ground(distance, 0, std::stod(depth)) / fluid);
    }
  }
}

void put_on_trial(const std::string& name, const std::map<std::string, std::string>& made, const Rows& rows,
                  validation::Check& check) {
  const double length = std::stod(made.at("length"));
  validation::IsothermalField field({validation::layers_from(made.at("layers")),
                                     {{0, 0, std::stod(made.at("top")), length}},
                                     radius,
                                     resistance,
                                     per_metre * length,
                                     20});
  std::map<double, Rows> at;
  for (const auto& row : rows) at[std::stod(row.at("days")) * 86400].push_back(row);
  std::vector<double> times;
  for (const auto& [time, figures] : at) times.push_back(time);

  Claims claims = claims_for(check, name, made.at("layers"));
  std::map<std::string, validation::WorstCase> parts, grounds;
  validation::Traces traces;
  field.march(times, [&](double time) { compare(at.at(time), field, claims, parts, grounds, traces); });
  for (const auto& [band, worst] : parts) worst.row(claims.wall, fmt::format("part of {} m", band), 0.001);
  for (const auto& [place, worst] : grounds) worst.row(claims.ground, place, 0.002);
  claims.fluid.plot(traces.on({"Rise of fluid and wall: " + name, "days", "rise [K]", true, false, {}}));
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  std::map<std::string, Rows> figures;
  for (const auto& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/layered_bores.csv"))
    figures[row.at("case")].push_back(row);
  for (const auto& made : reference_solutions::read_table(REFERENCE_SOLUTIONS "/layered_bore_cases.csv")) {
    put_on_trial(made.at("case"), made, figures.at(made.at("case")), check);
  }
  return check.finish();
}
