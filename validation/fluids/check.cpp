// Source: IAPWS SR6-08(2011) for water, Melinder 2010 for mixtures; handbook values from memory
#include <fmt/format.h>

#include <array>
#include <map>

#include "validation/fluids/earlier_tables.hpp"
#include "validation/fluids/properties.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;
using model::Antifreeze;
using validation::Origin;
using validation::WorstCase;
using namespace validation::fluids;

namespace {

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
  judge_potassium_acetate(check);
  judge_freezing(check);
  return check.finish();
}
