// Source: IAPWS SR6-08(2011) for water, Melinder 2010 for mixtures; handbook values from memory
#include <fmt/format.h>

#include <array>
#include <map>

#include "engine/base/temperature.hpp"
#include "engine/materials/fluid.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;
using model::Antifreeze;
using validation::Origin;
using validation::WorstCase;

namespace {

using TableRow = std::map<std::string, std::string>;

double number(const TableRow& row, const std::string& name) {
  return std::stod(row.at(name));
}

materials::FluidState state(Antifreeze base, double fraction, double celsius) {
  return materials::fluid_state({base, fraction, model::Fluid::Basis::mass}, celsius + zero_celsius);
}

double freezes(Antifreeze base, double fraction) {
  return materials::freezing_point({base, fraction, model::Fluid::Basis::mass}) - zero_celsius;
}

/// The four properties of one fluid against a table that names them so, each over all of its rows.
struct Properties {
  WorstCase density, heat_capacity, conductivity, viscosity;

  void compare(const std::string& where, const TableRow& row, const materials::FluidState& ours) {
    density.compare(where, number(row, "density"), ours.density);
    heat_capacity.compare(where, number(row, "heat_capacity"), ours.heat_capacity);
    conductivity.compare(where, number(row, "conductivity"), ours.conductivity);
    viscosity.compare(where, number(row, "viscosity"), ours.viscosity);
  }

  void rows(validation::Claim& claim, const std::array<double, 4>& allowed) const {
    density.row(claim, "density [kg/m3]", allowed[0]);
    heat_capacity.row(claim, "heat capacity [J/(kg K)]", allowed[1]);
    conductivity.row(claim, "conductivity [W/(m K)]", allowed[2]);
    viscosity.row(claim, "viscosity [Pa s]", allowed[3]);
  }
};

/// Viscosity against temperature, of which film and friction know most.
void draw_viscosity(validation::Claim& claim, Antifreeze base, const std::map<double, validation::Curve>& points) {
  validation::Plot plot{"viscosity", "temperature [degC]", "viscosity [Pa s]", false, true, {}};
  for (const auto& [fraction, curve] : points) {
    validation::Curve ours{fmt::format("ours, {:g}", fraction), {}, false};
    for (double t = curve.points.front().first; t <= curve.points.back().first; t += 1) {
      ours.points.emplace_back(t, state(base, fraction, t).viscosity);
    }
    plot.curves.push_back(curve);
    plot.curves.push_back(ours);
  }
  claim.plot(plot);
}

void judge_water(validation::Check& check) {
  auto& claim = check.claim({"water", "water has the properties of IAPWS SR6-08", Origin::computed,
                             "IAPWS SR6-08(2011), liquid water at 0.1 MPa, evaluated apart from the engine and held "
                             "against the release's own "
                             "check values and IAPWS-95; tests/reference/water_properties.csv",
                             "0 to 40 degC; for each property the temperature with the largest miss",
                             "1e-6: the same polynomials"});
  Properties worst;
  for (const TableRow& row : reference_solutions::reference_table("water_properties.csv")) {
    const double t = number(row, "temperature");
    worst.compare(fmt::format("{:g} degC", t), row, state(Antifreeze::none, 0, t));
  }
  worst.rows(claim, {1e-6, 1e-6, 1e-6, 1e-6});
  claim.absolute("freezing point [degC]", 0, freezes(Antifreeze::none, 0), 1e-6);

  auto& handbook = check.claim({"water-handbook", "water has the properties that every handbook prints", Origin::memory,
                                "steam tables and CRC Handbook, from memory", "0 and 20 degC at atmospheric pressure",
                                "0.1 % of density and heat capacity, 1.5 % of conductivity, 1 % of viscosity: the "
                                "release's stated uncertainty or "
                                "the handbooks' rounding, whichever is larger"});
  const std::array<double, 4> printed = {1e-3, 1e-3, 0.015, 0.01};
  Properties at_0, at_20;
  at_0.compare("0 degC",
               {{"density", "999.8"}, {"heat_capacity", "4217"}, {"conductivity", "0.561"}, {"viscosity", "1.792e-3"}},
               state(Antifreeze::none, 0, 0));
  at_20.compare("20 degC",
                {{"density", "998.2"}, {"heat_capacity", "4182"}, {"conductivity", "0.598"}, {"viscosity", "1.002e-3"}},
                state(Antifreeze::none, 0, 20));
  at_0.rows(handbook, printed);
  at_20.rows(handbook, printed);
}

void judge_mixture(validation::Check& check, const std::string& id, const std::string& name, Antifreeze base) {
  auto& claim = check.claim(
      {id, name + " in water has the properties of Melinder's polynomials", Origin::published,
       "Melinder 2010, Properties of secondary working fluids for indirect systems (IIR/IIF), coefficients as carried "
       "by "
       "the open property library CoolProp, evaluated apart from the engine; tests/reference/mixture_properties.csv",
       "10 to 35 % by mass, from the freezing point (not below -10 degC) to 40 degC; for each property the point with "
       "the "
       "largest miss",
       "1e-5 with the same coefficients, as the reference's README asks, and 0.001 K of the freezing point, its last "
       "digit but one; the data themselves are known to 0.1 % (density), 1 to 3.5 % (heat capacity), 0.5 % "
       "(conductivity), "
       "3 to 4 % (viscosity)"});
  Properties worst;
  WorstCase freezing;
  std::map<double, validation::Curve> drawn;
  for (const TableRow& row : reference_solutions::reference_table("mixture_properties.csv")) {
    if (row.at("fluid") != name) continue;
    const double x = number(row, "mass_fraction");
    freezing.compare_absolute(fmt::format("{:g} % by mass", 100 * x), number(row, "freezing_point"), freezes(base, x));
    if (row.at("density").empty()) continue;
    const double t = number(row, "temperature");
    worst.compare(fmt::format("{:g} % at {:g} degC", 100 * x, t), row, state(base, x, t));
    if (x != 0.1 && x != 0.2 && x != 0.35) continue;
    auto& curve = drawn[x];
    curve.label = fmt::format("Melinder, {:g}", x);
    curve.is_reference = true;
    curve.points.emplace_back(t, number(row, "viscosity"));
  }
  worst.rows(claim, {1e-5, 1e-5, 1e-5, 1e-5});
  freezing.row(claim, "freezing point [degC]", 1e-3);
  draw_viscosity(claim, base, drawn);
}

void judge_methanol(validation::Check& check) {
  auto& claim = check.claim(
      {"methanol", "methanol in water has the properties of Melinder's tables", Origin::published,
       "tables of an earlier edition of Melinder's data, as carried by the open property library CoolProp; "
       "validation/reference_solutions/methanol_tables.csv",
       "12.4 to 32.4 % by mass, from the freezing point (not below -20 degC) to 20 degC; for each property the point "
       "with "
       "the largest miss, from -10 degC on and below",
       "0.12 %, 3.5 %, 0.51 %, 4.3 %: what two such editions of the other three mixtures differ by from -10 degC on "
       "(mixture_properties.csv); 0.5 K of the freezing point, our judgement of the same"});
  Properties worst, cold;
  WorstCase freezing;
  std::map<double, validation::Curve> drawn;
  for (const TableRow& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/methanol_tables.csv")) {
    const double x = number(row, "mass_fraction");
    if (row.at("temperature").empty()) {
      freezing.compare_absolute(fmt::format("{:g} % by mass", 100 * x), number(row, "freezing_point"),
                                freezes(Antifreeze::methanol, x));
      continue;
    }
    const double t = number(row, "temperature");
    (t < -10 ? cold : worst)
        .compare(fmt::format("{:g} % at {:g} degC", 100 * x, t), row, state(Antifreeze::methanol, x, t));
    if (x != 0.124 && x != 0.324) continue;
    auto& curve = drawn[x];
    curve.label = fmt::format("tables, {:g}", x);
    curve.is_reference = true;
    curve.points.emplace_back(t, number(row, "viscosity"));
  }
  worst.rows(claim, {0.0012, 0.035, 0.0051, 0.043});
  const std::string editions =
      "the editions part further in the cold, where the others were not compared; loops do not run there";
  cold.density.row(claim, "density below -10 degC [kg/m3]", 0.0012);
  cold.heat_capacity.known_row(claim, "heat capacity below -10 degC [J/(kg K)]", 0.035, 0.045, editions);
  cold.conductivity.row(claim, "conductivity below -10 degC [W/(m K)]", 0.0051);
  cold.viscosity.known_row(claim, "viscosity below -10 degC [Pa s]", 0.043, 0.07, editions);
  freezing.row(claim, "freezing point [degC]", 0.5);
  draw_viscosity(claim, Antifreeze::methanol, drawn);
}

void judge_freezing(validation::Check& check) {
  auto& claim = check.claim({"freezing-points-handbook", "mixtures freeze where handbooks say", Origin::memory,
                             "freezing points by mass as common tables give them, from memory",
                             "freezing points [degC] at 20 and 30 % by mass",
                             "1.5 K: rounding and differing grades of the commercial fluids in such tables"});
  const struct {
    const char* name;
    Antifreeze base;
    double at_20, at_30;
  } remembered[] = {{"propylene glycol", Antifreeze::propylene_glycol, -7, -13},
                    {"ethylene glycol", Antifreeze::ethylene_glycol, -8, -14},
                    {"ethanol", Antifreeze::ethanol, -11, -20.5},
                    {"methanol", Antifreeze::methanol, -15, -26}};
  for (const auto& fluid : remembered) {
    claim.absolute(fmt::format("{}, 20 %", fluid.name), fluid.at_20, freezes(fluid.base, 0.2), 1.5);
    claim.absolute(fmt::format("{}, 30 %", fluid.name), fluid.at_30, freezes(fluid.base, 0.3), 1.5);
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::fluid);
  judge_water(check);
  judge_mixture(check, "propylene-glycol", "propylene glycol", Antifreeze::propylene_glycol);
  judge_mixture(check, "ethylene-glycol", "ethylene glycol", Antifreeze::ethylene_glycol);
  judge_mixture(check, "ethanol", "ethanol", Antifreeze::ethanol);
  judge_methanol(check);
  judge_freezing(check);
  return check.finish();
}
