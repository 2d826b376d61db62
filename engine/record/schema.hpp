#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>

#include "engine/base/calendar.hpp"

/// Every variable of the result file, once: the writer, the reader and the tools take names and units from here.
/// Temperatures are degC in the file and kelvin everywhere else; changes of temperature are K in both.
namespace stillground::record::schema {

/// Version of the format. A reader refuses a file with a higher one.
inline constexpr int format = 2;  // 1: the fluid's temperatures were those with which it left the cells

enum class Dim { time, bound, snapshot, year, group, z, r, bore };

/// Its name in the file.
constexpr const char* name(Dim dim) {
  constexpr std::array<const char*, 8> names = {"time", "bound", "snapshot", "year", "group", "z", "r", "bore"};
  return names.at(static_cast<std::size_t>(dim));
}

/// The dimensions of a variable, slowest first; none for a single number.
class Dims {
 public:
  constexpr Dims(std::initializer_list<Dim> dims) : rank_(dims.size()) {
    std::size_t i = 0;
    for (const Dim dim : dims) dims_.at(i++) = dim;
  }
  constexpr const Dim* begin() const { return dims_.data(); }
  constexpr const Dim* end() const { return dims_.data() + rank_; }
  constexpr std::size_t size() const { return rank_; }

 private:
  std::array<Dim, 4> dims_{};
  std::size_t rank_ = 0;
};

enum class Kind { real64, real32, int32 };

/// Stands for CF's "hours since DATE", since the date is the run's own.
inline constexpr std::string_view since_start = "hours since the start";

struct Variable {
  const char* name;
  Dims dims;
  Kind kind = Kind::real64;
  std::string_view unit = {};  ///< as UDUNITS-2 reads it; empty for a plain count
  std::string_view long_name;
  std::string_view standard_name = {};  ///< of the CF table, where it has a fitting one
  std::string_view cell_methods = {};
  std::string_view bounds = {};       ///< the variable that holds this coordinate's bounds
  std::string_view coordinates = {};  ///< coordinates that are not dimensions
  std::string_view positive = {};     ///< "down" for a depth
  bool has_gaps = false;              ///< NaN where a bore is not

  /// Coordinate variables carry their dimension's name.
  constexpr bool is_coordinate() const {
    return dims.size() == 1 && std::string_view(name) == schema::name(*dims.begin());
  }
};

/// The unit as the file of a run from `start` spells it: "degC", "hours since 2027-07-01 00:00:00".
inline std::string unit_text(const Variable& variable, const Date& start) {
  if (variable.unit == since_start) return "hours since " + iso(start) + " 00:00:00";
  return std::string(variable.unit);
}

// Hours.
constexpr Variable hourly_mean(const char* name, std::string_view unit, std::string_view long_name) {
  return {.name = name, .dims = {Dim::time}, .unit = unit, .long_name = long_name, .cell_methods = "time: mean"};
}

inline constexpr Variable time{.name = "time",
                               .dims = {Dim::time},
                               .unit = since_start,
                               .long_name = "end of the hour",
                               .standard_name = "time",
                               .bounds = "time_bounds"};
inline constexpr Variable time_bounds{.name = "time_bounds",
                                      .dims = {Dim::time, Dim::bound},
                                      .unit = since_start,
                                      .long_name = "start and end of the hour"};
inline constexpr auto eft = hourly_mean("eft", "degC", "fluid entering the heat pumps (leaving the field)");
inline constexpr auto lft = hourly_mean("lft", "degC", "fluid leaving the heat pumps (entering the bores)");
inline constexpr auto flow = hourly_mean("flow", "kg s-1", "fluid through the whole field");
inline constexpr auto heat_to_ground =
    hourly_mean("heat_to_ground", "W", "heat given to the ground by the fluid, positive into the ground");
inline constexpr auto heating = hourly_mean("heating", "W", "heat the building takes, hot water included");
inline constexpr auto cooling = hourly_mean("cooling", "W", "heat the building gives off, direct cooling included");
inline constexpr auto power = hourly_mean("power", "W", "electricity of the heat pumps");
inline constexpr auto hot_water =
    hourly_mean("hot_water", "W", "heat the building takes for hot water, part of heating");
inline constexpr auto cooling_direct =
    hourly_mean("cooling_direct", "W", "heat given off to the fluid without the heat pumps, part of cooling");
inline constexpr auto power_hot_water = hourly_mean("power_hot_water", "W", "electricity for hot water, part of power");
inline constexpr auto power_cooling = hourly_mean("power_cooling", "W", "electricity for cooling, part of power");

// The grid that every group has, and what does not change with time.
constexpr Variable constant(const char* name, Dims dims, std::string_view unit, std::string_view long_name) {
  return {.name = name, .dims = dims, .unit = unit, .long_name = long_name};
}

inline constexpr Variable z{.name = "z",
                            .dims = {Dim::z},
                            .unit = "m",
                            .long_name = "depth below the surface, cell centre",
                            .standard_name = "depth",
                            .bounds = "z_bounds",
                            .positive = "down"};
inline constexpr auto z_bounds =
    constant("z_bounds", {Dim::z, Dim::bound}, "m", "depth below the surface, upper and lower face of the cell");
inline constexpr Variable r{.name = "r",
                            .dims = {Dim::r},
                            .unit = "m",
                            .long_name = "distance from the bore's axis, cell node",
                            .bounds = "r_bounds"};
inline constexpr auto r_bounds =
    constant("r_bounds", {Dim::r, Dim::bound}, "m", "distance from the bore's axis, inner and outer face of the cell");
inline constexpr auto conductivity =
    constant("conductivity", {Dim::z}, "W m-1 K-1", "thermal conductivity of the ground");
inline constexpr auto heat_capacity =
    constant("heat_capacity", {Dim::z}, "J m-3 K-1", "heat capacity of the ground per volume");
inline constexpr auto drill_length =
    constant("drill_length", {}, "m", "metres to drill, all bores, as the scenario counts them");
inline constexpr auto fluid_heat_capacity =
    constant("fluid_heat_capacity", {}, "J kg-1 K-1", "heat capacity of the fluid");

// The layout.
constexpr Variable of_bore(const char* name, std::string_view unit, std::string_view long_name,
                           Kind kind = Kind::real64) {
  return {.name = name,
          .dims = {Dim::bore},
          .kind = kind,
          .unit = unit,
          .long_name = long_name,
          .coordinates = "bore_x bore_y"};
}

inline constexpr auto bore_x = constant("bore_x", {Dim::bore}, "m", "position on the plan, along x");
inline constexpr auto bore_y = constant("bore_y", {Dim::bore}, "m", "position on the plan, along y");
inline constexpr auto bore_top = of_bore("bore_top", "m", "depth at which the active bore starts");
inline constexpr auto bore_depth = of_bore("bore_depth", "m", "active length below the top");
inline constexpr auto bore_radius = of_bore("bore_radius", "m", "radius of the bore's wall");
inline constexpr auto bore_start = of_bore("bore_start", since_start, "instant from which the bore works");
inline constexpr auto bore_group = of_bore("bore_group", {}, "the group that stands for the bore", Kind::int32);

// What each group's bore holds.
inline constexpr Variable group{
    .name = "group",
    .dims = {Dim::group},
    .kind = Kind::int32,
    .long_name =
        "group of bores that are equal by the layout (or nearly so: group_error), counted from 0 as in bore_group"};
inline constexpr auto active_fraction =
    constant("active_fraction", {Dim::group, Dim::z}, "1", "part of the cell's height with an active bore in it");
inline constexpr auto grout_storage =
    constant("grout_storage", {Dim::group}, "J m-1 K-1", "heat capacity of grout and pipe per metre of bore");
inline constexpr auto fluid_storage_down = constant("fluid_storage_down", {Dim::group}, "J m-1 K-1",
                                                    "heat capacity of what flows down a bore, per metre of bore");
inline constexpr auto fluid_storage_up =
    constant("fluid_storage_up", {Dim::group}, "J m-1 K-1", "heat capacity of what flows up a bore, per metre of bore");

// Instants.
constexpr Variable in_bores(const char* name, std::string_view long_name) {
  return {.name = name,
          .dims = {Dim::snapshot, Dim::group, Dim::z},
          .unit = "degC",
          .long_name = long_name,
          .cell_methods = "snapshot: point",
          .has_gaps = true};
}

inline constexpr Variable snapshot{.name = "snapshot",
                                   .dims = {Dim::snapshot},
                                   .unit = since_start,
                                   .long_name = "instant of the recorded field",
                                   .standard_name = "time"};
inline constexpr Variable undisturbed{.name = "undisturbed",
                                      .dims = {Dim::snapshot, Dim::z},
                                      .unit = "degC",
                                      .long_name = "temperature of the ground without the field",
                                      .cell_methods = "snapshot: point"};
inline constexpr auto wall_temperature = in_bores("wall_temperature", "temperature of the bore's wall");
inline constexpr auto fluid_down =
    in_bores("fluid_down", "temperature of the fluid on its way down, at the cell's centre");
inline constexpr auto fluid_up = in_bores("fluid_up", "temperature of the fluid on its way up, at the cell's centre");
// The march holds what leaves a cell, and counts the fluid's heat by it: from the centres it follows but nearly.
inline constexpr Variable fluid_heat{
    .name = "fluid_heat",
    .dims = {Dim::snapshot, Dim::group},
    .unit = "J",
    .long_name = "heat of the fluid in one bore above 0 degC, as the balance counts it",
    .cell_methods = "snapshot: point",
    .has_gaps = true};
inline constexpr auto grout_temperature =
    in_bores("grout_temperature", "mean temperature of grout and pipe in the bore");

// Fields: each group's own change of the ground's temperature.
constexpr Variable rise(const char* name, Dims dims, std::string_view long_name, std::string_view cell_methods = {}) {
  return {.name = name,
          .dims = dims,
          .kind = Kind::real32,
          .unit = "K",
          .long_name = long_name,
          .cell_methods = cell_methods};
}

inline constexpr auto ground_rise =
    rise("ground_rise", {Dim::snapshot, Dim::group, Dim::z, Dim::r},
         "change of the ground's temperature by the group's own bore", "snapshot: point");
inline constexpr auto ground_rise_year_mean =
    rise("ground_rise_year_mean", {Dim::year, Dim::group, Dim::z, Dim::r},
         "change of the ground's temperature by the group's own bore, mean over the run-year", "year: mean");
inline constexpr auto ground_rise_steady =
    rise("ground_rise_steady", {Dim::group, Dim::z, Dim::r},
         "steady change of the ground's temperature by the group's own bore under the last year's mean heat");

// Run-years.
constexpr Variable yearly_sum(const char* name, std::string_view long_name) {
  return {.name = name, .dims = {Dim::year}, .unit = "J", .long_name = long_name, .cell_methods = "year: sum"};
}

inline constexpr Variable year{.name = "year",
                               .dims = {Dim::year},
                               .kind = Kind::int32,
                               .long_name = "run-year n: hours 8760 (n - 1) to 8760 n after the start"};

// What the minutes within its hours are estimated to bring.
constexpr Variable of_year(const char* name, std::string_view unit, std::string_view long_name,
                           std::string_view cell_methods = {}) {
  return {.name = name,
          .dims = {Dim::year},
          .unit = unit,
          .long_name = long_name,
          .cell_methods = cell_methods,
          .has_gaps = true};
}

inline constexpr auto eft_minute_min =
    of_year("eft_minute_min", "degC", "estimated least eft of any minute with flow", "year: minimum");
inline constexpr auto eft_minute_max =
    of_year("eft_minute_max", "degC", "estimated greatest eft of any minute with flow", "year: maximum");
inline constexpr auto eft_minute_min_time =
    of_year("eft_minute_min_time", since_start, "end of the hour of eft_minute_min");
inline constexpr auto eft_minute_max_time =
    of_year("eft_minute_max_time", since_start, "end of the hour of eft_minute_max");
inline constexpr auto balance_in = yearly_sum("balance_in", "heat put in by the fluid");
inline constexpr auto balance_stored = yearly_sum("balance_stored", "heat gained by ground, grout and fluid");
inline constexpr auto balance_surface = yearly_sum("balance_surface", "heat that left through the surface");
inline constexpr auto balance_deep =
    yearly_sum("balance_deep", "heat that left through the grid's bottom and outer edge");
inline constexpr auto balance_residual =
    yearly_sum("balance_residual", "heat unaccounted for: in - stored - surface - deep");

}  // namespace stillground::record::schema
