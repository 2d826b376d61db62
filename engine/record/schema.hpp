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
inline constexpr int format = 1;

inline constexpr double zero_celsius = 273.15;  ///< [K], by definition

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
  std::string_view unit;  ///< as UDUNITS-2 reads it; empty for a plain count
  std::string_view long_name;
  std::string_view standard_name = {};  ///< of the CF table, where it has a fitting one
  std::string_view cell_methods = {};
  std::string_view bounds = {};       ///< the variable that holds this coordinate's bounds
  std::string_view coordinates = {};  ///< coordinates that are not dimensions
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
inline constexpr Variable eft{.name = "eft",
                              .dims = {Dim::time},
                              .unit = "degC",
                              .long_name = "fluid entering the heat pumps (leaving the field)",
                              .cell_methods = "time: mean"};
inline constexpr Variable lft{.name = "lft",
                              .dims = {Dim::time},
                              .unit = "degC",
                              .long_name = "fluid leaving the heat pumps (entering the bores)",
                              .cell_methods = "time: mean"};
inline constexpr Variable flow{.name = "flow",
                               .dims = {Dim::time},
                               .unit = "kg s-1",
                               .long_name = "fluid through the whole field",
                               .cell_methods = "time: mean"};
inline constexpr Variable heat_to_ground{.name = "heat_to_ground",
                                         .dims = {Dim::time},
                                         .unit = "W",
                                         .long_name = "heat given to the ground by the fluid, positive into the ground",
                                         .cell_methods = "time: mean"};
inline constexpr Variable heating{.name = "heating",
                                  .dims = {Dim::time},
                                  .unit = "W",
                                  .long_name = "heat the building takes",
                                  .cell_methods = "time: mean"};
inline constexpr Variable cooling{.name = "cooling",
                                  .dims = {Dim::time},
                                  .unit = "W",
                                  .long_name = "heat the building gives off",
                                  .cell_methods = "time: mean"};
inline constexpr Variable power{.name = "power",
                                .dims = {Dim::time},
                                .unit = "W",
                                .long_name = "electricity of the heat pumps",
                                .cell_methods = "time: mean"};

// The grid that every group has.
inline constexpr Variable z{.name = "z",
                            .dims = {Dim::z},
                            .unit = "m",
                            .long_name = "depth below the surface, cell centre",
                            .standard_name = "depth",
                            .bounds = "z_bounds"};
inline constexpr Variable z_bounds{.name = "z_bounds",
                                   .dims = {Dim::z, Dim::bound},
                                   .unit = "m",
                                   .long_name = "depth below the surface, upper and lower face of the cell"};
inline constexpr Variable r{.name = "r",
                            .dims = {Dim::r},
                            .unit = "m",
                            .long_name = "distance from the bore's axis, cell node (geometric mean of its faces)",
                            .bounds = "r_bounds"};
inline constexpr Variable r_bounds{.name = "r_bounds",
                                   .dims = {Dim::r, Dim::bound},
                                   .unit = "m",
                                   .long_name = "distance from the bore's axis, inner and outer face of the cell"};
inline constexpr Variable conductivity{
    .name = "conductivity", .dims = {Dim::z}, .unit = "W m-1 K-1", .long_name = "thermal conductivity of the ground"};
inline constexpr Variable heat_capacity{.name = "heat_capacity",
                                        .dims = {Dim::z},
                                        .unit = "J m-3 K-1",
                                        .long_name = "heat capacity of the ground per volume"};

// The layout.
inline constexpr Variable bore_x{
    .name = "bore_x", .dims = {Dim::bore}, .unit = "m", .long_name = "position on the plan, along x"};
inline constexpr Variable bore_y{
    .name = "bore_y", .dims = {Dim::bore}, .unit = "m", .long_name = "position on the plan, along y"};
inline constexpr Variable bore_top{.name = "bore_top",
                                   .dims = {Dim::bore},
                                   .unit = "m",
                                   .long_name = "depth at which the active bore starts",
                                   .coordinates = "bore_x bore_y"};
inline constexpr Variable bore_depth{.name = "bore_depth",
                                     .dims = {Dim::bore},
                                     .unit = "m",
                                     .long_name = "active length below the top",
                                     .coordinates = "bore_x bore_y"};
inline constexpr Variable bore_radius{.name = "bore_radius",
                                      .dims = {Dim::bore},
                                      .unit = "m",
                                      .long_name = "radius of the bore's wall",
                                      .coordinates = "bore_x bore_y"};
inline constexpr Variable bore_start{.name = "bore_start",
                                     .dims = {Dim::bore},
                                     .unit = since_start,
                                     .long_name = "instant from which the bore works",
                                     .coordinates = "bore_x bore_y"};
inline constexpr Variable bore_group{.name = "bore_group",
                                     .dims = {Dim::bore},
                                     .kind = Kind::int32,
                                     .unit = {},
                                     .long_name = "the group that stands for the bore",
                                     .coordinates = "bore_x bore_y"};

// What each group's bore holds.
inline constexpr Variable group{
    .name = "group",
    .dims = {Dim::group},
    .kind = Kind::int32,
    .unit = {},
    .long_name = "group of bores that are equal by the layout, counted from 0 as in bore_group"};
inline constexpr Variable active_fraction{.name = "active_fraction",
                                          .dims = {Dim::group, Dim::z},
                                          .unit = "1",
                                          .long_name = "part of the cell's height with an active bore in it"};
inline constexpr Variable grout_storage{.name = "grout_storage",
                                        .dims = {Dim::group},
                                        .unit = "J m-1 K-1",
                                        .long_name = "heat capacity of grout and pipe per metre of bore"};
inline constexpr Variable fluid_storage{.name = "fluid_storage",
                                        .dims = {Dim::group},
                                        .unit = "J m-1 K-1",
                                        .long_name = "heat capacity of the fluid in one leg per metre of bore"};

// Instants.
inline constexpr Variable snapshot{.name = "snapshot",
                                   .dims = {Dim::snapshot},
                                   .unit = since_start,
                                   .long_name = "instant of the recorded field",
                                   .standard_name = "time"};
inline constexpr Variable ground_rise{.name = "ground_rise",
                                      .dims = {Dim::snapshot, Dim::group, Dim::z, Dim::r},
                                      .kind = Kind::real32,
                                      .unit = "K",
                                      .long_name = "change of the ground's temperature by the group's own bore",
                                      .cell_methods = "snapshot: point"};
inline constexpr Variable undisturbed{.name = "undisturbed",
                                      .dims = {Dim::snapshot, Dim::z},
                                      .unit = "degC",
                                      .long_name = "temperature of the ground without the field",
                                      .cell_methods = "snapshot: point"};
inline constexpr Variable wall_temperature{.name = "wall_temperature",
                                           .dims = {Dim::snapshot, Dim::group, Dim::z},
                                           .unit = "degC",
                                           .long_name = "temperature of the bore's wall",
                                           .cell_methods = "snapshot: point",
                                           .has_gaps = true};
inline constexpr Variable fluid_down{.name = "fluid_down",
                                     .dims = {Dim::snapshot, Dim::group, Dim::z},
                                     .unit = "degC",
                                     .long_name = "temperature of the fluid on its way down",
                                     .cell_methods = "snapshot: point",
                                     .has_gaps = true};
inline constexpr Variable fluid_up{.name = "fluid_up",
                                   .dims = {Dim::snapshot, Dim::group, Dim::z},
                                   .unit = "degC",
                                   .long_name = "temperature of the fluid on its way up",
                                   .cell_methods = "snapshot: point",
                                   .has_gaps = true};
inline constexpr Variable grout_temperature{.name = "grout_temperature",
                                            .dims = {Dim::snapshot, Dim::group, Dim::z},
                                            .unit = "degC",
                                            .long_name = "mean temperature of grout and pipe in the bore",
                                            .cell_methods = "snapshot: point",
                                            .has_gaps = true};

// Run-years.
inline constexpr Variable year{.name = "year",
                               .dims = {Dim::year},
                               .kind = Kind::int32,
                               .unit = {},
                               .long_name = "run-year n: hours 8760 (n - 1) to 8760 n after the start"};
inline constexpr Variable balance_in{.name = "balance_in",
                                     .dims = {Dim::year},
                                     .unit = "J",
                                     .long_name = "heat put in by the fluid",
                                     .cell_methods = "year: sum"};
inline constexpr Variable balance_stored{.name = "balance_stored",
                                         .dims = {Dim::year},
                                         .unit = "J",
                                         .long_name = "heat gained by ground, grout and fluid",
                                         .cell_methods = "year: sum"};
inline constexpr Variable balance_surface{.name = "balance_surface",
                                          .dims = {Dim::year},
                                          .unit = "J",
                                          .long_name = "heat that left through the surface",
                                          .cell_methods = "year: sum"};
inline constexpr Variable balance_deep{.name = "balance_deep",
                                       .dims = {Dim::year},
                                       .unit = "J",
                                       .long_name = "heat that left through the grid's bottom and outer edge",
                                       .cell_methods = "year: sum"};
inline constexpr Variable balance_residual{.name = "balance_residual",
                                           .dims = {Dim::year},
                                           .unit = "J",
                                           .long_name = "heat unaccounted for: in - stored - surface - deep",
                                           .cell_methods = "year: sum"};
inline constexpr Variable ground_rise_year_mean{
    .name = "ground_rise_year_mean",
    .dims = {Dim::year, Dim::group, Dim::z, Dim::r},
    .kind = Kind::real32,
    .unit = "K",
    .long_name = "change of the ground's temperature by the group's own bore, mean over the run-year",
    .cell_methods = "year: mean"};
inline constexpr Variable ground_rise_steady{
    .name = "ground_rise_steady",
    .dims = {Dim::group, Dim::z, Dim::r},
    .kind = Kind::real32,
    .unit = "K",
    .long_name = "steady change of the ground's temperature by the group's own bore under the last year's mean heat"};

// Single numbers.
inline constexpr Variable drill_length{.name = "drill_length",
                                       .dims = {},
                                       .unit = "m",
                                       .long_name = "metres to drill, all bores, as the scenario counts them"};
inline constexpr Variable fluid_heat_capacity{
    .name = "fluid_heat_capacity", .dims = {}, .unit = "J kg-1 K-1", .long_name = "heat capacity of the fluid"};

}  // namespace stillground::record::schema
