#include "validation/fluids/earlier_tables.hpp"

#include <fmt/format.h>

#include "validation/fluids/properties.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation::fluids {

namespace {

using model::Antifreeze;

/// What two editions of the data of the other mixtures differ by, down to -10 degC: density, heat capacity,
/// conductivity, viscosity.
constexpr std::array<double, 4> between_editions = {0.0012, 0.035, 0.0051, 0.043};

constexpr const char* tolerance =
    "0.12 %, 3.5 %, 0.51 %, 4.3 %: what two such editions of the other three mixtures differ by from -10 degC on "
    "(mixture_properties.csv); 0.5 K of the freezing point, our judgement of the same";

/// A mixture against all rows of such tables.
struct Tables {
  bool (*at_the_edge)(double fraction, double celsius);  ///< where the other mixtures' editions were not compared
  Properties worst = {}, edge = {};
  WorstCase freezing = {}, freezing_edge = {};
  std::map<double, Curve> drawn = {};  ///< viscosity by mass fraction

  void compare(const TableRow& row, Antifreeze base) {
    const double x = number(row, "mass_fraction");
    if (row.at("temperature").empty()) {
      (at_the_edge(x, 0) ? freezing_edge : freezing)
          .compare_absolute(fmt::format("{:g} % by mass", 100 * x), number(row, "freezing_point"), freezes(base, x));
      return;
    }
    const double t = number(row, "temperature");
    (at_the_edge(x, t) ? edge : worst).compare(fmt::format("{:g} % at {:g} degC", 100 * x, t), row, state(base, x, t));
    drawn[x].points.emplace_back(t, number(row, "viscosity"));
  }

  void draw(Claim& claim, Antifreeze base, double lean, double rich) {
    std::map<double, Curve> some = {{lean, drawn.at(lean)}, {rich, drawn.at(rich)}};
    for (auto& [x, curve] : some) curve.label = fmt::format("tables, {:g}", x), curve.is_reference = true;
    draw_viscosity(claim, base, some);
  }
};

/// The mass fraction at which the engine's mixture has a density [kg/m3] at 15 degC: by halving, density growing with
/// the salt.
double fraction_of(Antifreeze base, double density) {
  double less = 0.1, more = 0.45;
  for (int n = 0; n < 50; ++n) {
    const double x = (less + more) / 2;
    (state(base, x, 15).density < density ? less : more) = x;
  }
  return less;
}

void judge_makers_fluids(Check& check, const std::vector<TableRow>& rows) {
  auto& claim = check.claim(
      {"potassium-acetate-maker", "potassium acetate in water has the properties of a maker's fluids",
       Origin::published,
       "a maker's technical information (1999) on two ready-made antifreezes, as carried by the open property library "
       "CoolProp; validation/reference_solutions/potassium_acetate.csv",
       "as much salt as gives their density at 15 degC, 1152 and 1202 kg/m3; -10 to 40 degC; for each property the "
       "point "
       "with the largest miss",
       "0.12 %, 3.5 %, 0.51 %, 4.3 %: what two editions of the other mixtures' data differ by "
       "(mixture_properties.csv)"});
  std::map<std::string, double> fractions;
  for (const TableRow& row : rows) {
    if (row.at("source") != "tables" && number(row, "temperature") == 15) {
      fractions[row.at("source")] = fraction_of(Antifreeze::potassium_acetate, number(row, "density"));
    }
  }
  Properties worst;
  for (const TableRow& row : rows) {
    if (row.at("source") == "tables") continue;
    const double t = number(row, "temperature");
    worst.compare(fmt::format("{} at {:g} degC", row.at("source"), t), row,
                  state(Antifreeze::potassium_acetate, fractions.at(row.at("source")), t));
  }
  const std::string inhibitors = "the maker's fluids hold inhibitors, whose amount is not told, beside the salt";
  worst.density.known_row(claim, "density [kg/m3]", between_editions[0], 0.0025, inhibitors);
  worst.heat_capacity.row(claim, "heat capacity [J/(kg K)]", between_editions[1]);
  worst.conductivity.known_row(claim, "conductivity [W/(m K)]", between_editions[2], 0.045, inhibitors);
  worst.viscosity.known_row(claim, "viscosity [Pa s]", between_editions[3], 0.11, inhibitors);
}

}  // namespace

void judge_methanol(Check& check) {
  auto& claim =
      check.claim({"methanol", "methanol in water has the properties of Melinder's tables", Origin::published,
                   "tables of an earlier edition of Melinder's data, as carried by the open property library "
                   "CoolProp; validation/reference_solutions/methanol_tables.csv",
                   "12.4 to 32.4 % by mass, from the freezing point (not below -20 degC) to 20 degC; for each "
                   "property the point with the largest miss, from -10 degC on and below",
                   tolerance});
  Tables tables{.at_the_edge = [](double, double celsius) { return celsius < -10; }};
  for (const TableRow& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/methanol_tables.csv")) {
    tables.compare(row, Antifreeze::methanol);
  }
  tables.worst.rows(claim, between_editions);
  const std::string editions =
      "the editions part further in the cold, where the others were not compared; loops do not run there";
  const Properties& cold = tables.edge;
  cold.density.row(claim, "density below -10 degC [kg/m3]", between_editions[0]);
  cold.heat_capacity.known_row(claim, "heat capacity below -10 degC [J/(kg K)]", between_editions[1], 0.045, editions);
  cold.conductivity.row(claim, "conductivity below -10 degC [W/(m K)]", between_editions[2]);
  cold.viscosity.known_row(claim, "viscosity below -10 degC [Pa s]", between_editions[3], 0.07, editions);
  tables.freezing.row(claim, "freezing point [degC]", 0.5);
  tables.draw(claim, Antifreeze::methanol, 0.124, 0.324);
}

void judge_potassium_acetate(Check& check) {
  auto& claim = check.claim(
      {"potassium-acetate", "potassium acetate in water has the properties of Melinder's tables", Origin::published,
       "tables of an earlier edition of Melinder's data, as carried by the open property library CoolProp; "
       "validation/reference_solutions/potassium_acetate.csv",
       "11 to 41 % by mass, from the freezing point (not below -20 degC) to 30 degC; for each property the point with "
       "the largest miss, apart for the leanest and the richest",
       tolerance});
  const std::vector<TableRow> rows = reference_solutions::read_table(REFERENCE_SOLUTIONS "/potassium_acetate.csv");
  Tables tables{.at_the_edge = [](double fraction, double) { return fraction < 0.12 || fraction > 0.4; }};
  for (const TableRow& row : rows) {
    if (row.at("source") == "tables") tables.compare(row, Antifreeze::potassium_acetate);
  }
  tables.worst.rows(claim, between_editions);
  tables.freezing.row(claim, "freezing point [degC]", 0.5);
  const std::string editions = "the editions part at the ends of the range, where few data hold the fits";
  const Properties& edge = tables.edge;
  edge.density.known_row(claim, "density at 11 and 41 % [kg/m3]", between_editions[0], 0.0025, editions);
  edge.heat_capacity.row(claim, "heat capacity at 11 and 41 % [J/(kg K)]", between_editions[1]);
  edge.conductivity.row(claim, "conductivity at 11 and 41 % [W/(m K)]", between_editions[2]);
  edge.viscosity.row(claim, "viscosity at 11 and 41 % [Pa s]", between_editions[3]);
  tables.freezing_edge.known_row(claim, "freezing point at 11 and 41 % [degC]", 0.5, 0.8, editions);
  tables.draw(claim, Antifreeze::potassium_acetate, 0.21, 0.36);
  judge_makers_fluids(check, rows);
}

}  // namespace stillground::validation::fluids
