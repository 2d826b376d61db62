#include "validation/fluids/properties.hpp"

#include <fmt/format.h>

#include "engine/base/temperature.hpp"

namespace stillground::validation::fluids {

double number(const TableRow& row, const std::string& name) {
  return std::stod(row.at(name));
}

materials::FluidState state(model::Antifreeze base, double fraction, double celsius) {
  return materials::fluid_state({base, fraction, model::Fluid::Basis::mass}, celsius + zero_celsius);
}

double freezes(model::Antifreeze base, double fraction) {
  return materials::freezing_point({base, fraction, model::Fluid::Basis::mass}) - zero_celsius;
}

void Properties::compare(const std::string& where, const TableRow& row, const materials::FluidState& ours) {
  density.compare(where, number(row, "density"), ours.density);
  heat_capacity.compare(where, number(row, "heat_capacity"), ours.heat_capacity);
  conductivity.compare(where, number(row, "conductivity"), ours.conductivity);
  viscosity.compare(where, number(row, "viscosity"), ours.viscosity);
}

void Properties::rows(Claim& claim, const std::array<double, 4>& allowed) const {
  density.row(claim, "density [kg/m3]", allowed[0]);
  heat_capacity.row(claim, "heat capacity [J/(kg K)]", allowed[1]);
  conductivity.row(claim, "conductivity [W/(m K)]", allowed[2]);
  viscosity.row(claim, "viscosity [Pa s]", allowed[3]);
}

void draw_viscosity(Claim& claim, model::Antifreeze base, const std::map<double, Curve>& points) {
  Plot plot{"viscosity", "temperature [degC]", "viscosity [Pa s]", false, true, {}};
  for (const auto& [fraction, curve] : points) {
    Curve ours{fmt::format("ours, {:g}", fraction), {}, false};
    for (double t = curve.points.front().first; t <= curve.points.back().first; t += 1) {
      ours.points.emplace_back(t, state(base, fraction, t).viscosity);
    }
    plot.curves.push_back(curve);
    plot.curves.push_back(ours);
  }
  claim.plot(plot);
}

}  // namespace stillground::validation::fluids
