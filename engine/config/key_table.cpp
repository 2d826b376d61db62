#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "engine/bore/loop_type.hpp"
#include "engine/config/keys.hpp"
#include "engine/model/fluid.hpp"

namespace stillground::config {
namespace {

using D = units::Dimension;
using enum Kind;
constexpr Need required = Need::required;

#define STILLGROUND_WORD(name, word) "|" word
constexpr std::string_view fluids = "water" STILLGROUND_ANTIFREEZES(STILLGROUND_WORD);
#undef STILLGROUND_WORD

// The ranges keep out slips of unit and of sign, nothing else: what the model can do within them is judged with the
// physics.
constexpr std::array table = {
    // clang-format off
    Key{.path = "title", .kind = text, .example = "A site to be named", .help = "one line; the file's name if absent"},
    Key{.path = "units", .kind = word, .preset = "si", .words = "si|us", .example = "us", .help = "in which people are shown figures; --units goes before it"},

    Key{.path = "ground", .kind = map, .need = required, .help = "what lies under the site"},
    Key{.path = "ground.layers", .kind = list, .need = required, .help = "the driller's log, from the surface down", .inside = "ground.layers[]"},
    Key{.path = "ground.layers[].to", .kind = quantity, .dimension = D::length, .least = "0.1 m", .most = "5000 m", .example = "9 m", .example2 = "30 ft", .help = "depth of the layer's lower face; the last layer has none"},
    Key{.path = "ground.layers[].use", .kind = text, .example = "sandstone", .help = "an entry of configs/ground.yaml; keys beside it go before its values"},
    Key{.path = "ground.layers[].material", .kind = text, .example = "sandstone", .help = "a name for the tables"},
    Key{.path = "ground.layers[].conductivity", .kind = quantity, .need = required, .dimension = D::conductivity, .least = "0.05 W/(m K)", .most = "20 W/(m K)", .example = "2.3 W/(m K)", .example2 = "1.3 Btu/(h ft degF)", .help = "of the layer as it lies there, with its water"},
    Key{.path = "ground.layers[].heat_capacity", .kind = quantity, .dimension = D::volumetric_heat_capacity, .least = "0.1 MJ/(m3 K)", .most = "10 MJ/(m3 K)", .example = "2.1 MJ/(m3 K)", .example2 = "31 Btu/(ft3 degF)", .help = "by volume"},
    Key{.path = "ground.layers[].diffusivity", .kind = quantity, .dimension = D::diffusivity, .least = "0.01 mm2/s", .most = "20 mm2/s", .example = "1.0 mm2/s", .example2 = "0.93 ft2/day", .help = "instead of heat_capacity"},
    Key{.path = "ground.undisturbed", .kind = map, .need = required, .help = "the ground's temperature without the bores: surface_mean and its kin, or profile, or mean_over_bore"},
    Key{.path = "ground.undisturbed.surface_mean", .kind = quantity, .dimension = D::temperature, .least = "-30 degC", .most = "50 degC", .example = "10.4 degC", .example2 = "51 degF", .help = "yearly mean of the ground surface"},
    Key{.path = "ground.undisturbed.surface_swing", .kind = quantity, .dimension = D::temperature_difference, .preset = "0 K", .least = "0 K", .most = "50 K", .example = "9 K", .example2 = "16 degF", .help = "half the yearly range"},
    Key{.path = "ground.undisturbed.coldest_day", .kind = number, .least = "0", .most = "365", .example = "25", .help = "days after 1 January 00:00; needed with a swing"},
    Key{.path = "ground.undisturbed.heat_flow", .kind = quantity, .dimension = D::heat_flow_per_area, .preset = "0 W/m2", .least = "0 W/m2", .most = "1 W/m2", .example = "0.065 W/m2", .example2 = "0.02 Btu/(h ft2)", .help = "geothermal, upward"},
    Key{.path = "ground.undisturbed.surface_film", .kind = quantity, .dimension = D::film_coefficient, .least = "0.1 W/(m2 K)", .most = "1000 W/(m2 K)", .example = "15 W/(m2 K)", .example2 = "2.6 Btu/(h ft2 degF)", .help = "between surface and air, whose temperature is then given; without it the surface itself has that temperature"},
    Key{.path = "ground.undisturbed.surface_trend", .kind = quantity, .dimension = D::temperature_rate, .preset = "0 K/decade", .least = "-5 K/decade", .most = "5 K/decade", .example = "0.2 K/decade", .example2 = "0.36 degF/decade", .help = "warming of the surface from the run's start"},
    Key{.path = "ground.undisturbed.profile", .kind = file, .example = "measured.csv", .help = "columns depth [m], temperature [degC]; constant in time"},
    Key{.path = "ground.undisturbed.mean_over_bore", .kind = quantity, .dimension = D::temperature, .least = "-20 degC", .most = "60 degC", .example = "11.8 degC", .example2 = "53 degF", .help = "one temperature for the whole depth"},

    Key{.path = "bore", .kind = map, .need = required, .help = "the make of every bore"},
    Key{.path = "bore.top", .kind = quantity, .need = required, .dimension = D::length, .least = "0 m", .most = "50 m", .example = "1.8 m", .example2 = "6 ft", .help = "where the header trench lies; the active bore starts here"},
    Key{.path = "bore.depth", .kind = quantity, .need = required, .dimension = D::length, .least = "5 m", .most = "1000 m", .example = "120 m", .example2 = "400 ft", .help = "active length below the top"},
    Key{.path = "bore.diameter", .kind = quantity, .need = required, .dimension = D::length, .least = "50 mm", .most = "1000 mm", .example = "150 mm", .example2 = "6 in", .help = "as drilled"},
    Key{.path = "bore.loop", .kind = word, .preset = "single-u", .example = "single-u"},
    Key{.path = "bore.pipe", .kind = map, .need = required, .example = "{use: hdpe-dr11-1.25in}", .help = "of the legs; of a coaxial loop the outer pipe"},
    Key{.path = "bore.pipe.use", .kind = text, .example = "hdpe-dr11-1.25in", .help = "an entry of configs/pipes.yaml; keys beside it go before its values"},
    Key{.path = "bore.pipe.outer_diameter", .kind = quantity, .need = required, .dimension = D::length, .least = "10 mm", .most = "300 mm", .example = "42.2 mm", .example2 = "1.66 in", .help = "of the leg"},
    Key{.path = "bore.pipe.wall", .kind = quantity, .need = required, .dimension = D::length, .least = "0.3 mm", .most = "50 mm", .example = "3.8 mm", .example2 = "0.15 in", .help = "thickness"},
    Key{.path = "bore.pipe.conductivity", .kind = quantity, .need = required, .dimension = D::conductivity, .least = "0.05 W/(m K)", .most = "400 W/(m K)", .example = "0.4 W/(m K)", .example2 = "0.23 Btu/(h ft degF)", .help = "of the pipe's wall"},
    Key{.path = "bore.pipe.heat_capacity", .kind = quantity, .dimension = D::volumetric_heat_capacity, .preset = "2.1 MJ/(m3 K)", .least = "0.1 MJ/(m3 K)", .most = "10 MJ/(m3 K)", .example = "2.1 MJ/(m3 K)", .example2 = "31 Btu/(ft3 degF)", .help = "by volume; preset: polyethylene, from memory"},
    Key{.path = "bore.pipe.roughness", .kind = quantity, .dimension = D::length, .preset = "0.0015 mm", .least = "0 mm", .most = "1 mm", .example = "0.0015 mm", .example2 = "0.000059 in", .help = "of the inner wall; preset: drawn plastic, from memory"},
    Key{.path = "bore.grout", .kind = map, .need = required, .example = "{conductivity: 1.6 W/(m K), heat_capacity: 3.0 MJ/(m3 K)}", .help = "what fills the bore around the pipes"},
    Key{.path = "bore.grout.use", .kind = text, .example = "bentonite-sand", .help = "an entry of configs/grouts.yaml; keys beside it go before its values"},
    Key{.path = "bore.grout.conductivity", .kind = quantity, .need = required, .dimension = D::conductivity, .least = "0.05 W/(m K)", .most = "20 W/(m K)", .example = "1.6 W/(m K)", .example2 = "0.9 Btu/(h ft degF)", .help = "as set in the bore"},
    Key{.path = "bore.grout.heat_capacity", .kind = quantity, .need = required, .dimension = D::volumetric_heat_capacity, .least = "0.1 MJ/(m3 K)", .most = "10 MJ/(m3 K)", .example = "3.0 MJ/(m3 K)", .example2 = "45 Btu/(ft3 degF)", .help = "by volume"},
    Key{.path = "bore.resistance", .kind = either, .dimension = D::resistance_per_length, .least = "0.005 K m/W", .most = "1 K m/W", .example = "0.11 K m/W", .example2 = "0.19 h ft degF/Btu", .help = "effective, as a thermal response test gives it (between the mean of the fluid in and out and the wall): the local one that it leaves replaces the computed one; or {effective, at_flow, over}"},
    Key{.path = "bore.resistance.effective", .kind = quantity, .need = required, .dimension = D::resistance_per_length, .least = "0.005 K m/W", .most = "1 K m/W", .example = "0.11 K m/W", .example2 = "0.19 h ft degF/Btu", .help = "what the test gave"},
    Key{.path = "bore.resistance.at_flow", .kind = quantity, .dimension = D::volume_flow, .least = "0.001 L/s", .most = "100 L/s", .example = "0.4 L/s", .example2 = "6.3 gpm", .help = "through the test's bore; the scenario's full flow if absent"},
    Key{.path = "bore.resistance.over", .kind = quantity, .dimension = D::length, .least = "5 m", .most = "1000 m", .example = "150 m", .example2 = "500 ft", .help = "active length of the test's bore; depth if absent. Give it when depth is varied"},
    Key{.path = "bore.drilled_from", .kind = word, .preset = "surface", .words = "surface|trench", .example = "trench", .help = "where metres to drill are counted from"},

    Key{.path = "field", .kind = map, .need = required, .help = "the layout: one of the following"},
    Key{.path = "field.grid", .kind = map, .example = "{rows: 6, columns: 5, spacing: 6 m}", .help = "rows along y, columns along x, one spacing"},
    Key{.path = "field.grid.rows", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "6", .help = "along y"},
    Key{.path = "field.grid.columns", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "5", .help = "along x"},
    Key{.path = "field.grid.spacing", .kind = quantity, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "needed for more than one bore"},
    Key{.path = "field.staggered", .kind = map, .example = "{rows: 5, columns: 6, spacing: 6 m}", .help = "rows shifted by turns: six neighbours at one spacing"},
    Key{.path = "field.staggered.rows", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "5", .help = "along y"},
    Key{.path = "field.staggered.columns", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "6", .help = "bores of each row"},
    Key{.path = "field.staggered.spacing", .kind = quantity, .need = required, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "between any two neighbours"},
    Key{.path = "field.line", .kind = map, .example = "{bores: 8, spacing: 6 m}", .help = "bores in one line"},
    Key{.path = "field.line.bores", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "8", .help = "how many"},
    Key{.path = "field.line.spacing", .kind = quantity, .need = required, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "between neighbours"},
    Key{.path = "field.l_shape", .kind = map, .example = "{along_x: 6, along_y: 4, spacing: 6 m}", .help = "two legs at right angles"},
    Key{.path = "field.l_shape.along_x", .kind = whole, .need = required, .least = "2", .most = "1000", .example = "6", .help = "bores, the corner counted"},
    Key{.path = "field.l_shape.along_y", .kind = whole, .need = required, .least = "2", .most = "1000", .example = "4", .help = "bores, the corner counted"},
    Key{.path = "field.l_shape.spacing", .kind = quantity, .need = required, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "between neighbours"},
    Key{.path = "field.u_shape", .kind = map, .example = "{along_x: 6, along_y: 4, spacing: 6 m}", .help = "a base and an arm at each of its ends"},
    Key{.path = "field.u_shape.along_x", .kind = whole, .need = required, .least = "2", .most = "1000", .example = "6", .help = "bores of the base, corners counted"},
    Key{.path = "field.u_shape.along_y", .kind = whole, .need = required, .least = "2", .most = "1000", .example = "4", .help = "bores of an arm, the corner counted"},
    Key{.path = "field.u_shape.spacing", .kind = quantity, .need = required, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "between neighbours"},
    Key{.path = "field.ring", .kind = map, .example = "{bores: 12, spacing: 6 m}", .help = "bores on a circle"},
    Key{.path = "field.ring.bores", .kind = whole, .need = required, .least = "3", .most = "1000", .example = "12", .help = "how many"},
    Key{.path = "field.ring.spacing", .kind = quantity, .need = required, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "between neighbours, straight across"},
    Key{.path = "field.fan", .kind = map, .example = "{rays: 5, bores_per_ray: 3, first: 4 m, spacing: 6 m, opening: 180}", .help = "vertical bores on rays from one chamber"},
    Key{.path = "field.fan.rays", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "5", .help = "how many"},
    Key{.path = "field.fan.bores_per_ray", .kind = whole, .need = required, .least = "1", .most = "1000", .example = "3", .help = "on each ray"},
    Key{.path = "field.fan.first", .kind = quantity, .need = required, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "4 m", .example2 = "13 ft", .help = "from the chamber to the first bore of a ray"},
    Key{.path = "field.fan.spacing", .kind = quantity, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "along a ray; needed for more than one bore"},
    Key{.path = "field.fan.opening", .kind = number, .preset = "360", .least = "0", .most = "360", .example = "180", .help = "degrees between the first and the last ray; 360: all round"},
    Key{.path = "field.plot", .kind = map, .example = "{outline: plot.csv, setback: 3 m, spacing: 6 m}", .help = "a plot of land, filled with as many bores as it holds; beside positions the land they stand on"},
    Key{.path = "field.plot.outline", .kind = file, .need = required, .example = "plot.csv", .help = "corners in order, columns x [m] and y [m]"},
    Key{.path = "field.plot.setback", .kind = quantity, .need = required, .dimension = D::length, .least = "0 m", .most = "500 m", .example = "3 m", .example2 = "10 ft", .help = "of every bore from the outline"},
    Key{.path = "field.plot.spacing", .kind = quantity, .dimension = D::length, .least = "0.1 m", .most = "500 m", .example = "6 m", .example2 = "20 ft", .help = "between neighbours; needed without positions"},
    Key{.path = "field.plot.pattern", .kind = word, .preset = "square", .words = "square|staggered", .example = "staggered", .help = "how the bores stand to each other"},
    Key{.path = "field.plot.angle", .kind = number, .preset = "0", .least = "-90", .most = "90", .example = "12", .help = "of the rows against x, degrees counter-clockwise"},
    Key{.path = "field.plot.keep_clear", .kind = list, .help = "parts of the plot where nobody drills", .inside = "field.plot.keep_clear[]"},
    Key{.path = "field.plot.keep_clear[].outline", .kind = file, .need = required, .example = "house.csv", .help = "corners in order, columns x [m] and y [m]"},
    Key{.path = "field.plot.keep_clear[].setback", .kind = quantity, .dimension = D::length, .least = "0 m", .most = "500 m", .example = "3 m", .example2 = "10 ft", .help = "of every bore from it; the plot's if absent"},
    Key{.path = "field.positions", .kind = file, .example = "bores.csv", .help = "columns x [m], y [m] and optional depth, top, start, stop, flow_weight, name, as plan --csv writes them"},

    Key{.path = "fluid", .kind = map, .need = required, .help = "what runs in the loops"},
    Key{.path = "fluid.base", .kind = word, .need = required, .words = fluids, .example = "propylene glycol", .help = "the antifreeze, or plain water"},
    Key{.path = "fluid.mass_fraction", .kind = quantity, .dimension = D::fraction, .least = "0", .most = "0.6", .example = "0.20", .example2 = "20 %", .help = "of the antifreeze"},
    Key{.path = "fluid.volume_fraction", .kind = quantity, .dimension = D::fraction, .least = "0", .most = "0.6", .example = "0.20", .example2 = "20 %", .help = "of the parts before mixing, at 15 degC"},

    Key{.path = "flow", .kind = map, .need = required, .help = "through the bores"},
    Key{.path = "flow.per_bore", .kind = quantity, .dimension = D::volume_flow, .least = "0.001 L/s", .most = "100 L/s", .example = "0.35 L/s", .example2 = "5.5 gpm", .help = "all U's of a bore together"},
    Key{.path = "flow.total", .kind = quantity, .dimension = D::volume_flow, .least = "0.001 L/s", .most = "100000 L/s", .example = "10 L/s", .example2 = "160 gpm", .help = "of the whole field, instead of per_bore"},
    Key{.path = "flow.runs", .kind = word, .preset = "with load", .words = "with load|always", .example = "with load", .help = "with load: the pump stops in hours without any"},
    Key{.path = "flow.varies", .kind = word, .preset = "never", .words = "never|with load|in stages", .example = "with load", .help = "with load: in proportion to the load; in stages: as many heat pumps' pumps as the load needs"},
    Key{.path = "flow.least", .kind = quantity, .dimension = D::fraction, .preset = "30 %", .least = "1 %", .most = "100 %", .example = "0.3", .example2 = "30 %", .help = "of full flow, where it varies with load"},
    Key{.path = "flow.stages", .kind = whole, .least = "2", .most = "100", .example = "3", .help = "equal heat pumps, where it varies in stages"},
    Key{.path = "flow.in_series", .kind = whole, .preset = "1", .least = "1", .most = "100", .example = "2", .help = "bores one after the other on a circuit, in the layout's order; per_bore is then the circuit's flow"},
    Key{.path = "flow.reynolds_min", .kind = number, .preset = "2300", .least = "0", .most = "100000", .example = "3000", .help = "in the loops at the design hour, the coldest EFT: slower flow is warned of; 2300: laminar below"},

    Key{.path = "loads", .kind = map, .need = required, .help = "the building's through a heat pump, or the ground's own"},
    Key{.path = "loads.file", .kind = file, .example = "loads.csv", .help = "hourly; one year or several, repeated when it ends"},
    Key{.path = "loads.heating", .kind = column, .example = "heating_kw", .help = "heat the building takes"},
    Key{.path = "loads.hot_water", .kind = column, .example = "hot_water_kw", .help = "heat for hot water, through heat_pump.hot_water_cop"},
    Key{.path = "loads.cooling", .kind = column, .example = "cooling_kw", .help = "heat the building gives off"},
    Key{.path = "loads.cooling_by", .kind = word, .preset = "heat pump", .words = "heat pump|fluid", .example = "fluid", .help = "fluid: direct cooling without the heat pump"},
    Key{.path = "loads.to_ground", .kind = either, .dimension = D::power, .least = "-1000 MW", .most = "1000 MW", .example = "13.5 kW", .example2 = "46000 Btu/h", .help = "heat put into the ground: a column with a file, a constant without"},
    Key{.path = "loads.first_row", .kind = date, .preset = "1 January", .example = "2027-07-01", .help = "the day of the file's first hour"},
    Key{.path = "loads.monthly", .kind = file, .example = "months.csv", .help = "instead of file: twelve rows with columns heating_energy [kWh], heating_peak [kW], heating_peak_hours [h], the same of cooling and hot_water"},
    Key{.path = "loads.growth", .kind = quantity, .dimension = D::fraction, .preset = "0", .least = "-0.2", .most = "0.2", .example = "0.01", .example2 = "1 %", .help = "of the loads from one run-year to the next"},
    Key{.path = "loads.times", .kind = whole, .preset = "1", .least = "1", .most = "10000", .example = "12", .help = "so many equal buildings"},
    Key{.path = "loads.from", .kind = date, .preset = "the run's start", .example = "2029-07-01", .help = "nothing before this day"},
    Key{.path = "loads.peak", .kind = text, .preset = "even", .example = "1.4 times for 10 min", .help = "of the load within every hour, whose mean stays as given; for the EFT of a minute"},
    Key{.path = "loads.buildings", .kind = list, .help = "several buildings, summed hour by hour; each with the keys above", .inside = "loads"},

    Key{.path = "heat_pump", .kind = map, .example = "{heating_cop: {\"0 degC\": 3.4, \"10 degC\": 4.4}}", .help = "needed with heating or cooling"},
    Key{.path = "heat_pump.heating_cop", .kind = curve, .least = "1", .most = "30", .example = "{\"0 degC\": 3.4, \"10 degC\": 4.4}", .help = "against the entering fluid temperature, above 1"},
    Key{.path = "heat_pump.hot_water_cop", .kind = curve, .least = "1", .most = "30", .example = "{\"0 degC\": 2.4, \"10 degC\": 2.9}", .help = "the same for hot water; heating_cop if absent"},
    Key{.path = "heat_pump.cooling_cop", .kind = curve, .least = "0", .most = "100", .example = "{\"10 degC\": 7.0, \"35 degC\": 3.9}", .help = "against the entering fluid temperature, above 0"},

    Key{.path = "run", .kind = map, .need = required, .help = "how long and how finely"},
    Key{.path = "run.start", .kind = date, .need = required, .example = "2027-07", .help = "first day of the run"},
    Key{.path = "run.years", .kind = whole, .need = required, .least = "1", .most = "200", .example = "25", .help = "of 365 days"},
    Key{.path = "run.method", .kind = word, .preset = "march", .words = "march|screening", .example = "screening", .help = "screening: a quick estimate of the EFT, no fields"},
    Key{.path = "run.step", .kind = quantity, .dimension = D::time, .preset = "30 min", .least = "10 s", .most = "1 h", .example = "30 min", .help = "divides one hour"},
    Key{.path = "run.stepper", .kind = word, .preset = "automatic", .words = "automatic|reference", .example = "reference", .help = "reference: march with ARKODE"},
    Key{.path = "run.clocks", .kind = word, .preset = "automatic", .words = "automatic|one", .example = "one", .help = "one: every cell at the same step"},
    Key{.path = "run.groups", .kind = word, .preset = "symmetry", .words = "symmetry|merged|none", .example = "merged", .help = "merged: bores with nearly alike neighbours share a grid; none: every bore has its own"},
    Key{.path = "run.group_error", .kind = quantity, .dimension = D::temperature_difference, .preset = "0.05 K", .least = "0.000001 K", .most = "10 K", .example = "0.05 K", .example2 = "0.09 degF", .help = "at a bore wall, mean over its length, where groups are merged: the run confirms it"},
    Key{.path = "run.refresh", .kind = quantity, .dimension = D::time, .preset = "1 day", .least = "1 h", .most = "30 day", .example = "1 day", .help = "of the neighbours' sum; whole hours"},
    Key{.path = "run.grid", .kind = either, .preset = "normal", .words = "normal|fine", .example = "fine", .help = "or keys of its own; what is not given is chosen by the engine"},
    Key{.path = "run.grid.radial_cells", .kind = whole, .least = "8", .most = "500", .example = "36", .help = "from the bore wall to the outer radius"},
    Key{.path = "run.grid.end_cell", .kind = quantity, .dimension = D::length, .least = "0.05 m", .most = "20 m", .example = "1 m", .example2 = "3 ft", .help = "height of the cells at the bore's two ends"},
    Key{.path = "run.grid.growth", .kind = number, .least = "1.01", .most = "1.3", .example = "1.2", .help = "of the cells' heights away from the ends"},
    Key{.path = "run.grid.largest_cell", .kind = quantity, .dimension = D::length, .least = "0.1 m", .most = "200 m", .example = "8 m", .example2 = "25 ft", .help = "along the bore"},
    Key{.path = "run.grid.outer_radius", .kind = quantity, .dimension = D::length, .least = "5 m", .most = "20 km", .example = "300 m", .example2 = "1000 ft", .help = "where nothing is felt any more"},
    Key{.path = "run.grid.bottom_margin", .kind = quantity, .dimension = D::length, .least = "1 m", .most = "5 km", .example = "150 m", .example2 = "500 ft", .help = "below the deepest toe"},

    Key{.path = "limits", .kind = map, .help = "what the fluid must keep"},
    Key{.path = "limits.eft_min", .kind = either, .example = "-2 degC", .example2 = "28 degF", .help = "of the fluid that enters the heat pumps; or {value, over}", .inside = "limits.*"},
    Key{.path = "limits.eft_max", .kind = either, .example = "32 degC", .example2 = "90 degF", .help = "the same, at most", .inside = "limits.*"},
    Key{.path = "limits.lft_min", .kind = either, .example = "-5 degC", .example2 = "23 degF", .help = "of the fluid that leaves the heat pumps; or {value, over}", .inside = "limits.*"},
    Key{.path = "limits.lft_max", .kind = either, .example = "38 degC", .example2 = "100 degF", .help = "the same, at most", .inside = "limits.*"},
    Key{.path = "limits.mean_fluid_min", .kind = either, .example = "0 degC", .example2 = "32 degF", .help = "of the two's mean; or {value, over}", .inside = "limits.*"},
    Key{.path = "limits.mean_fluid_max", .kind = either, .example = "30 degC", .example2 = "86 degF", .help = "the same, at most", .inside = "limits.*"},
    Key{.path = "limits.*.value", .kind = quantity, .need = required, .dimension = D::temperature, .least = "-60 degC", .most = "100 degC", .example = "-1 degC", .example2 = "30 degF", .help = "least or most, as the key says"},
    Key{.path = "limits.*.over", .kind = word, .preset = "hour", .words = "minute|hour|month", .example = "month", .help = "the mean that is judged; minute: of the EFT, estimated"},

    Key{.path = "record", .kind = map, .help = "what the result keeps besides the hourly series"},
    Key{.path = "record.fields", .kind = word, .preset = "monthly", .words = "monthly|yearly|none", .example = "monthly", .help = "how often the ground's temperatures are kept"},
    // clang-format on
};

/// "a, b, or c".
std::string listed(const std::vector<std::string_view>& parts) {
  return fmt::format("{}, or {}", fmt::join(parts.begin(), parts.end() - 1, ", "), parts.back());
}

/// The row of `bore.loop` with the words and the help that the table of loop types gives.
Key with_types(Key loop) {
  std::vector<std::string_view> allowed, what;
  for (const bore::NamedLoopType& row : bore::loop_types()) {
    allowed.push_back(row.word);
    what.push_back(row.what);
  }
  static const std::string known = fmt::format("{}", fmt::join(allowed, "|")), help = listed(what);
  loop.words = known;
  loop.help = help;
  return loop;
}

/// The loop types' own rows, each once.
void add_loop_types(std::vector<Key>& rows) {
  for (const bore::NamedLoopType& row : bore::loop_types()) {
    for (const Key& own : row.type.own_keys()) {
      const auto same = [&](const Key& other) { return other.path == own.path; };
      if (std::none_of(rows.begin(), rows.end(), same)) rows.push_back(own);
    }
  }
}

std::vector<Key> whole_table() {
  std::vector<Key> rows;
  for (const Key& row : table) {
    if (row.path == "bore.grout") add_loop_types(rows);
    rows.push_back(row.path == "bore.loop" ? with_types(row) : row);
  }
  return rows;
}

}  // namespace

std::span<const Key> keys() {
  static const std::vector<Key> rows = whole_table();
  return rows;
}

}  // namespace stillground::config
