#pragma once

#include <array>
#include <map>
#include <string>

#include "engine/materials/fluid.hpp"
#include "validation/harness/worst_case.hpp"

/// What the claims about fluids share.
namespace stillground::validation::fluids {

/// A row of a table, its cells by their column's name.
using TableRow = std::map<std::string, std::string>;

double number(const TableRow& row, const std::string& name);

/// The engine's properties at a mass fraction and a temperature [degC].
materials::FluidState state(model::Antifreeze base, double fraction, double celsius);

/// The engine's freezing point [degC].
double freezes(model::Antifreeze base, double fraction);

/// The four properties of one fluid against a table that names them so, each over all of its rows.
struct Properties {
  WorstCase density, heat_capacity, conductivity, viscosity;

  void compare(const std::string& where, const TableRow& row, const materials::FluidState& ours);

  /// One row a property: density, heat capacity, conductivity, viscosity.
  void rows(Claim& claim, const std::array<double, 4>& allowed) const;
};

/// Viscosity against temperature, of which film and friction know most; `points` by mass fraction.
void draw_viscosity(Claim& claim, model::Antifreeze base, const std::map<double, Curve>& points);

}  // namespace stillground::validation::fluids
