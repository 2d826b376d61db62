#include <cmath>

#include "engine/base/digest.hpp"
#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;
using testing::grid;
using testing::read_edited;
using testing::surface;

TEST_CASE("A scenario arrives in SI", "[config]") {
  const model::Scenario s = read_edited({});
  REQUIRE(s.ground.layers.size() == 3);
  CHECK(s.ground.layers[0].bottom == 9);
  CHECK(s.ground.layers[0].material == "silty clay");
  CHECK(s.ground.layers[0].solid.conductivity == 1.3);
  CHECK(s.ground.layers[0].solid.heat_capacity == Approx(2.6e6).epsilon(1e-14));
  CHECK(std::isinf(s.ground.layers[2].bottom));
  const auto& ground = std::get<model::SeasonalSurface>(s.ground.undisturbed);
  CHECK(ground.mean == Approx(283.55).epsilon(1e-14));
  CHECK(ground.swing == 9);
  CHECK(ground.coldest == 25 * 86400.0);
  CHECK(ground.heat_flow == 0.065);
  CHECK(ground.surface_film == 0);
  CHECK(ground.trend == 0);
  CHECK(s.bore.top == 1.8);
  CHECK(s.bore.depth == 120);
  CHECK(s.bore.diameter == Approx(0.15).epsilon(1e-14));
  CHECK(std::get<model::SingleU>(s.bore.loop).leg_spacing == Approx(0.08).epsilon(1e-14));
  CHECK(s.bore.grout.solid.conductivity == 1.6);
  CHECK_FALSE(s.bore.resistance.has_value());
  CHECK_FALSE(s.bore.drilled_from_trench);
  const auto& layout = std::get<model::Grid>(s.layout);
  CHECK((layout.rows == 3 && layout.columns == 2 && layout.spacing == 6));
  CHECK(s.fluid.base == model::Antifreeze::propylene_glycol);
  CHECK(s.fluid.fraction == 0.2);
  CHECK(s.fluid.basis == model::Fluid::Basis::mass);
  CHECK(s.flow.rate == Approx(0.35e-3).epsilon(1e-14));
  CHECK(s.flow.amount == model::Flow::Amount::per_bore);
  CHECK(s.flow.runs == model::Flow::Runs::with_load);
  CHECK(s.run.start == Date{2027, 7, 1});
  CHECK(s.run.years == 1);
  CHECK(s.run.step == 1800);
  CHECK(s.run.refresh == 86400);
  CHECK(s.fields == model::RecordFields::monthly);
  CHECK(s.warnings.empty());
}

TEST_CASE("Loads arrive in W from the first hour of January", "[config]") {
  const model::Scenario s = read_edited({"loads 2 => heating_kw [W],cooling_kw [kBtu/h]"});
  const auto& loads = std::get<model::BuildingLoads>(s.loads);
  CHECK(loads.heating.values.size() == 8760);
  CHECK(loads.heating.first_hour == 0);
  CHECK(loads.heating.values[0] == 11.5);
  CHECK(loads.heating.values[23] == 11.5 - 23 * 0.25);
  CHECK(loads.cooling.values[4001] == Approx((4001 % 24) * 0.5 * 293.07107).epsilon(1e-8));
  CHECK(loads.cooling_direct.values.empty());
}

TEST_CASE("A layer takes the catalogue's values save those given beside `use`", "[config]") {
  const model::Scenario s = read_edited({});
  CHECK(s.ground.layers[1].material == "sandstone");
  CHECK(s.ground.layers[1].solid.conductivity == 2.3);
  CHECK(s.ground.layers[1].solid.heat_capacity == Approx(2.2e6).epsilon(1e-14));
  CHECK(s.bore.pipe.name == "hdpe-dr11-1.25in");
  CHECK(s.bore.pipe.outer_diameter == Approx(0.04216).epsilon(1e-14));
}

TEST_CASE("A diffusivity given beside `use` replaces the catalogue's heat capacity", "[config]") {
  const model::Scenario s = read_edited({"site use: sandstone, => use: sandstone, diffusivity: 1 mm2/s,"});
  CHECK(s.ground.layers[1].solid.heat_capacity == Approx(2.3 / 1e-6).epsilon(1e-14));
}

TEST_CASE("Diffusivity and conductivity give the heat capacity", "[config]") {
  CHECK(read_edited({}).ground.layers[2].solid.diffusivity() == Approx(1.2e-6).epsilon(1e-14));
}

TEST_CASE("An American scenario says the same as a European one", "[config]") {
  const model::Scenario metric = read_edited({});
  const model::Scenario american =
      read_edited({"site depth: 120 m => depth: 393.70078740157 ft", "site top: 1.8 m => top: 70.866141732283 in",
                   "site surface_mean: 10.4 degC => surface_mean: 50.72 degF",
                   "site surface_swing: 9 K => surface_swing: 16.2 degF"});
  CHECK(american.bore.depth == Approx(metric.bore.depth).epsilon(1e-12));
  CHECK(american.bore.top == Approx(metric.bore.top).epsilon(1e-12));
  const auto& a = std::get<model::SeasonalSurface>(american.ground.undisturbed);
  const auto& m = std::get<model::SeasonalSurface>(metric.ground.undisturbed);
  CHECK(a.mean == Approx(m.mean).epsilon(1e-12));
  CHECK(a.swing == Approx(m.swing).epsilon(1e-12));
}

TEST_CASE("Undisturbed ground may be a profile or one temperature", "[config]") {
  const model::Scenario measured = read_edited({"site " + surface + " => profile: deep.csv",
                                                "file deep.csv = depth [ft],temperature [degF]\\n0,50\\n400,53.6\\n"});
  const auto& profile = std::get<model::MeasuredProfile>(measured.ground.undisturbed);
  REQUIRE(profile.points.size() == 2);
  CHECK(profile.points[1].depth == Approx(121.92).epsilon(1e-14));
  CHECK(profile.points[1].temperature == Approx(285.15).epsilon(1e-14));
  const model::Scenario mean = read_edited({"site " + surface + " => mean_over_bore: 11.8 degC"});
  CHECK(std::get<model::MeanOverBore>(mean.ground.undisturbed).temperature == Approx(284.95).epsilon(1e-14));
}

TEST_CASE("A profile that ends above the toe is used with a warning", "[config]") {
  const model::Scenario s = read_edited(
      {"site " + surface + " => profile: deep.csv", "file deep.csv = depth [m],temperature [degC]\\n100,11\\n"});
  REQUIRE(s.warnings.size() == 1);
  CHECK(s.warnings[0].line().find("the profile ends at 100.0 m, the deepest bore at 121.8 m") != std::string::npos);
}

TEST_CASE("Film and trend of the surface, resistance and drilling from the trench are read", "[config]") {
  const model::Scenario s =
      read_edited({"site heat_flow: 0.065 W/m2 => heat_flow: 0.065 W/m2\\n    surface_film: 15 W/(m2 K)\\n    "
                   "surface_trend: 0.2 K/decade",
                   "site   loop: single-u =>   resistance: 0.11 K m/W\\n  drilled_from: trench"});
  const auto& ground = std::get<model::SeasonalSurface>(s.ground.undisturbed);
  CHECK(ground.surface_film == 15);
  CHECK(ground.trend == Approx(0.2 / 315360000.0).epsilon(1e-14));
  REQUIRE(s.bore.resistance.has_value());
  CHECK(s.bore.resistance->effective == 0.11);
  CHECK_FALSE(s.bore.resistance->at_flow.has_value());
  CHECK_FALSE(s.bore.resistance->over.has_value());
  CHECK(s.bore.drilled_from_trench);
}

TEST_CASE("A measured resistance may say at which flow and over which length the test ran", "[config]") {
  const model::Scenario s =
      read_edited({"site   loop: single-u =>   resistance: {effective: 0.12 K m/W, at_flow: 0.4 L/s, over: 500 ft}"});
  REQUIRE(s.bore.resistance.has_value());
  CHECK(s.bore.resistance->effective == 0.12);
  CHECK(s.bore.resistance->at_flow.value() == Approx(0.4e-3).epsilon(1e-14));
  CHECK(s.bore.resistance->over.value() == Approx(152.4).epsilon(1e-14));
}

TEST_CASE("Without geothermal heat the reader warns", "[config]") {
  const model::Scenario s = read_edited({"site \\n    heat_flow: 0.065 W/m2 => "});
  REQUIRE(s.warnings.size() == 1);
  CHECK(s.warnings[0].text.find("heat_flow is not given") != std::string::npos);
}

TEST_CASE("The ground's own load may be a column or a constant, and needs no heat pump", "[config]") {
  const std::string columns = "  file: loads.csv\\n  heating: heating_kw\\n  cooling: cooling_kw\\n";
  const model::Scenario constant = read_edited({"site " + columns + " =>   to_ground: -13.5 kW\\n"});
  CHECK(std::get<model::ConstantGroundLoad>(constant.loads).to_ground == Approx(-13500).epsilon(1e-14));
  CHECK_FALSE(constant.heat_pump.has_value());
  REQUIRE(constant.warnings.size() == 1);
  CHECK(constant.warnings[0].text.find("heat_pump is not used") != std::string::npos);
  const model::Scenario hourly =
      read_edited({"site " + columns + " =>   file: loads.csv\\n  to_ground: cooling_kw\\n", "loads 3 => 0,-2"});
  CHECK(std::get<model::GroundLoads>(hourly.loads).to_ground.values.at(0) == Approx(-2000).epsilon(1e-14));
}

TEST_CASE("Direct cooling needs no cooling curve", "[config]") {
  const model::Scenario s =
      read_edited({"site cooling: cooling_kw => cooling: cooling_kw\\n  cooling_by: fluid",
                   "site   cooling_cop: {\"10 degC\": 7.0, \"25 degC\": 5.0, \"35 degC\": 3.9}\\n => "});
  CHECK(std::get<model::BuildingLoads>(s.loads).cooling_direct.values.size() == 8760);
  CHECK(std::get<model::BuildingLoads>(s.loads).cooling.values.empty());
  CHECK(s.heat_pump.value().cooling_cop.empty());
}

TEST_CASE("Curves are read by rising temperature in kelvin", "[config]") {
  const auto pump = read_edited({}).heat_pump.value();
  REQUIRE(pump.heating_cop.size() == 3);
  CHECK(pump.heating_cop[0].eft == Approx(268.15).epsilon(1e-14));
  CHECK(pump.heating_cop[2].cop == 4.4);
}

TEST_CASE("Limits know their quantity, side and span", "[config]") {
  const model::Scenario s =
      read_edited({"site eft_min: -2 degC => mean_fluid_min: {value: -1 degC, over: month}\\n  lft_max: 100 degF"});
  REQUIRE(s.limits.size() == 3);
  CHECK(s.limits[0].name == "eft_max");
  CHECK(s.limits[0].side == model::Limit::Side::most);
  CHECK(s.limits[1].quantity == model::Limit::Quantity::lft);
  CHECK(s.limits[2].quantity == model::Limit::Quantity::mean_fluid);
  CHECK(s.limits[2].over == model::Limit::Over::month);
  CHECK(s.limits[2].value == Approx(272.15).epsilon(1e-14));
}

TEST_CASE("A limit may be judged by minutes", "[config]") {
  const model::Scenario s = read_edited({"site eft_min: -2 degC => eft_min: {value: -1 degC, over: minute}"});
  CHECK(s.limits[0].over == model::Limit::Over::minute);
  CHECK(s.limits[1].over == model::Limit::Over::hour);
}

TEST_CASE("A load's peak within the hour is a factor and how long it lasts", "[config]") {
  CHECK_FALSE(read_edited({}).peak);
  CHECK_FALSE(read_edited({"site   file: loads.csv =>   file: loads.csv\\n  peak: even"}).peak);
  const auto peak = read_edited({"site   file: loads.csv =>   file: loads.csv\\n  peak: 1.4 times for 10 min"}).peak;
  REQUIRE(peak);
  CHECK(peak->factor == 1.4);
  CHECK(peak->duration == Approx(600).epsilon(1e-14));
}

TEST_CASE("Every acceleration can be switched off and every cell chosen", "[config]") {
  const model::Scenario s =
      read_edited({"site step: 30 min => step: 0.25 h\\n  stepper: reference\\n  clocks: one\\n  groups: none\\n  "
                   "refresh: 12 h\\n  grid: "
                   "{radial_cells: 40, end_cell: 0.5 m, growth: 1.2, largest_cell: 6 m, outer_radius: 250 m, "
                   "bottom_margin: 80 m}"});
  CHECK(s.run.step == 900);
  CHECK(s.run.stepper == model::Run::Stepper::reference);
  CHECK(s.run.clocks == model::Run::Clocks::one);
  CHECK(s.run.groups == model::Run::Groups::none);
  CHECK(s.run.refresh == 43200);
  CHECK(s.run.grid.radial_cells == 40);
  CHECK(s.run.grid.end_cell == 0.5);
  CHECK(s.run.grid.growth == 1.2);
  CHECK(s.run.grid.largest_cell == 6);
  CHECK(s.run.grid.outer_radius == 250);
  CHECK(s.run.grid.bottom_margin == 80);
  const model::Scenario merged =
      read_edited({"site step: 30 min => step: 30 min\\n  groups: merged\\n  group_error: 0.09 degF"});
  CHECK(merged.run.groups == model::Run::Groups::merged);
  CHECK(merged.run.group_error == Approx(0.05).epsilon(1e-12));
  CHECK(read_edited({"site step: 30 min => step: 30 min\\n  grid: fine"}).run.grid.level ==
        model::GridChoice::Level::fine);
}

TEST_CASE("A scenario is marched if it does not ask for a screening estimate", "[config]") {
  CHECK(read_edited({}).run.method == model::Run::Method::march);
  CHECK(read_edited({"site step: 30 min => step: 30 min\\n  method: screening"}).run.method ==
        model::Run::Method::screening);
}

TEST_CASE("Every key's place is noted: a value's own, a map's at its key, items of a list from 1", "[config]") {
  const model::Scenario s = read_edited({});
  const auto place = [&](const std::string& key) {
    const Place p = s.place(key);
    return fmt::format("{}:{}", p.line, p.column);
  };
  CHECK(place("bore.depth") == "15:10");
  CHECK(place("bore") == "13:1");
  CHECK(place("bore.pipe") == "18:3");
  CHECK(place("ground.layers[2].conductivity") == "6:48");
  CHECK(place("field.grid.spacing") == "22:40");
  CHECK(place("limits.eft_min") == "41:12");
  CHECK(place("bore.resistance") == "0:0");
}

TEST_CASE("The inputs are named with the digests of what was read", "[config]") {
  const model::Scenario s = read_edited({});
  REQUIRE(s.inputs.size() == 4);
  CHECK(s.inputs[0].name == "site.yaml");
  CHECK(s.inputs[0].sha256 == sha256(s.text));
  CHECK(s.text == testing::slurp(testing::broken_folder() / "good.yaml"));
  CHECK(s.inputs[1].name == "configs/ground.yaml");
  CHECK(s.inputs[1].sha256 == sha256(testing::slurp(testing::fs::path(PROJECT_FOLDER) / "configs/ground.yaml")));
  CHECK(s.inputs[2].name == "configs/pipes.yaml");
  CHECK(s.inputs[3].name == "loads.csv");
}

TEST_CASE("A scenario written with CRLF, a byte-order mark and comments reads the same", "[config]") {
  const model::Scenario s = read_edited(
      {"site # An invented site. => \\xef\\xbb\\xbf# An invented site.",
       "site title: Six bores behind the mill\\n => title: M\\xc3\\xbchle \\xc2\\xb7 6 bores  # name\\r\\n"});
  CHECK(s.title == "M\u00fchle \u00b7 6 bores");
}

TEST_CASE("Without a title the file's name stands for it", "[config]") {
  CHECK(read_edited({"site title: Six bores behind the mill\\n => "}).title == "site");
}

TEST_CASE("Bores closer than 3 m are computed with a warning", "[config]") {
  const model::Scenario s = read_edited({"site spacing: 6 m => spacing: 2.5 m"});
  REQUIRE(s.warnings.size() == 1);
  CHECK(s.warnings[0].place.line == 22);
  CHECK(s.warnings[0].line().find("the bores stand 2.50 m apart") != std::string::npos);
}

TEST_CASE("A lone bore needs no spacing", "[config]") {
  const model::Scenario s = read_edited({"site " + grid + " => grid: {rows: 1, columns: 1}"});
  CHECK(std::get<model::Grid>(s.layout).rows == 1);
}
