#include "engine/materials/mixture.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>
#include <utility>

#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

const std::map<std::string, const materials::Mixture*> mixtures = {
    {"propylene glycol", &materials::propylene_glycol},
    {"ethylene glycol", &materials::ethylene_glycol},
    {"ethanol", &materials::ethanol},
    {"methanol", &materials::methanol},
    {"potassium acetate", &materials::potassium_acetate},
};

}  // namespace

// Reference: mixture_properties.csv, the polynomials of Melinder (2010) evaluated apart from the engine, 7 digits
// printed.
TEST_CASE("Mixtures have the properties of Melinder's polynomials") {
  double worst = 0;
  int rows = 0;
  for (const auto& row : reference_solutions::reference_table("mixture_properties.csv")) {
    if (row.at("density").empty()) continue;  // frozen
    const auto state = materials::mixture_state(
        *mixtures.at(row.at("fluid")), std::stod(row.at("temperature")) + 273.15, std::stod(row.at("mass_fraction")));
    const auto miss = [&](const char* name, double value) {
      worst = std::max(worst, std::abs(value / std::stod(row.at(name)) - 1));
    };
    miss("density", state.density);
    miss("heat_capacity", state.heat_capacity);
    miss("conductivity", state.conductivity);
    miss("viscosity", state.viscosity);
    miss("prandtl", state.prandtl());
    ++rows;
  }
  CHECK(rows > 100);
  CHECK(worst < 1e-6);  // the table's seventh digit
}

TEST_CASE("Mixtures freeze where Melinder's polynomials say") {
  double worst = 0;
  for (const auto& row : reference_solutions::reference_table("mixture_properties.csv")) {
    const double ours =
        materials::mixture_freezing_point(*mixtures.at(row.at("fluid")), std::stod(row.at("mass_fraction"))) - 273.15;
    worst = std::max(worst, std::abs(ours - std::stod(row.at("freezing_point"))));
  }
  CHECK(worst < 1e-3);  // the table's last digit [K]
}

// Methanol is not in the reference files. Values: tables of an earlier edition of Melinder's data (Thermophysical
// properties of liquid secondary refrigerants, IIR, 1997 [title and year from memory]), read in the open property
// library CoolProp, where the viscosity is in 1e-5 Pa s. The tolerances are the differences that the
// reference file's header found between such tables and the polynomials of the other three fluids: 0.12 %
// (density), 3.5 % (heat capacity), 0.51 % (conductivity), 4.3 % (viscosity), and 0.5 K in the freezing point (our
// judgement).
TEST_CASE("Methanol's polynomials agree with tables of the same author") {
  struct Row {
    double x, celsius, density, heat_capacity, conductivity, viscosity;
  };
  constexpr std::array<Row, 8> table = {{
      {0.174, -10, 976.953, 4155.26, 0.461431, 4.84805e-3},
      {0.174, 0, 975.496, 4144.29, 0.474094, 3.12128e-3},
      {0.174, 20, 970.496, 4136.57, 0.497261, 1.53407e-3},
      {0.224, 10, 966.752, 4046.97, 0.460505, 2.31797e-3},
      {0.324, -10, 961.376, 3789.90, 0.401362, 5.52165e-3},
      {0.274, 5, 961.959, 3935.58, 0.432625, 2.94317e-3},
      {0.324, 0, 957.249, 3814.92, 0.407781, 3.65166e-3},
      {0.324, 20, 947.661, 3865.41, 0.421532, 1.81670e-3},
  }};
  for (const Row& row : table) {
    CAPTURE(row.x, row.celsius);
    const auto state = materials::mixture_state(materials::methanol, row.celsius + 273.15, row.x);
    CHECK(state.density == Approx(row.density).epsilon(0.0012));
    CHECK(state.heat_capacity == Approx(row.heat_capacity).epsilon(0.035));
    CHECK(state.conductivity == Approx(row.conductivity).epsilon(0.0051));
    CHECK(state.viscosity == Approx(row.viscosity).epsilon(0.043));
  }
  CHECK(materials::mixture_freezing_point(materials::methanol, 0.178) == Approx(273.15 - 13.08).margin(0.5));
  CHECK(materials::mixture_freezing_point(materials::methanol, 0.278) == Approx(273.15 - 23.02).margin(0.5));
}

// Values: tables under Melinder's name, as of methanol above, read in the same library's data. Tolerances: the
// differences between such tables and the polynomials, stated there.
TEST_CASE("Potassium acetate's polynomials agree with tables of the same author") {
  struct Row {
    double x, celsius, density, heat_capacity, conductivity, viscosity;
  };
  constexpr std::array<Row, 9> table = {{
      {0.16, 0, 1086.243095, 3600.390465, 0.516739807, 262.2143254e-5},
      {0.16, 20, 1080.229555, 3634.637461, 0.545804018, 149.235599e-5},
      {0.21, -10, 1116.710398, 3432.174214, 0.486355066, 441.9873793e-5},
      {0.21, 20, 1106.920906, 3485.526961, 0.528173649, 171.149098e-5},
      {0.26, 5, 1140.464543, 3308.971958, 0.492205487, 304.8018878e-5},
      {0.31, -20, 1177.461251, 3114.124782, 0.447107575, 1052.094523e-5},
      {0.31, 30, 1158.147189, 3217.51135, 0.509796031, 186.4086652e-5},
      {0.36, -15, 1206.592953, 2979.800882, 0.441689886, 1030.131686e-5},
      {0.41, 0, 1230.407851, 2879.824274, 0.445198731, 678.0053877e-5},
  }};
  for (const Row& row : table) {
    CAPTURE(row.x, row.celsius);
    const auto state = materials::mixture_state(materials::potassium_acetate, row.celsius + 273.15, row.x);
    CHECK(state.density == Approx(row.density).epsilon(0.0012));
    CHECK(state.heat_capacity == Approx(row.heat_capacity).epsilon(0.035));
    CHECK(state.conductivity == Approx(row.conductivity).epsilon(0.0051));
    CHECK(state.viscosity == Approx(row.viscosity).epsilon(0.043));
  }
  for (const auto& [x, celsius] : {std::pair{0.11, -5.009}, {0.21, -11.962}, {0.31, -24.727}, {0.36, -33.831}}) {
    CAPTURE(x);
    CHECK(materials::mixture_freezing_point(materials::potassium_acetate, x) == Approx(273.15 + celsius).margin(0.5));
  }
}

TEST_CASE("More antifreeze freezes later and flows worse") {
  for (const auto& [name, mixture] : mixtures) {
    CAPTURE(name);
    double freezing = 273.15;
    double viscosity = 0;
    for (double x = 0.1; x < 0.36; x += 0.05) {
      CHECK(materials::mixture_freezing_point(*mixture, x) < freezing);
      CHECK(materials::mixture_state(*mixture, 283.15, x).viscosity > viscosity);
      freezing = materials::mixture_freezing_point(*mixture, x);
      viscosity = materials::mixture_state(*mixture, 283.15, x).viscosity;
    }
  }
}
