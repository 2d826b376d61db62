#include "validation/loop_types/table.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

constexpr double storage = 2e6;  // [J/(m3 K)]

/// Half of the leg is pipe wall, half is film: only their sum may count.
SectionOfRow double_u(const TableRow& row) {
  const std::string& name = row.at("loop");
  SectionOfRow section;
  model::Bore& bore = section.bore;
  bore.diameter = 2 * number(row, "r_bore");
  bore.loop = model::DoubleU{
      2 * number(row, "pipe_circle"),
      name.starts_with("series") ? model::DoubleU::Connection::series : model::DoubleU::Connection::parallel,
      name.ends_with("crossed")};
  const double outer = 2 * number(row, "r_pipe"), wall = outer / 11, leg = number(row, "R_pipe");
  bore.pipe = {"", outer, wall, std::log(outer / (outer - 2 * wall)) / (2 * std::numbers::pi * leg / 2), storage, 0};
  bore.grout = {"", {number(row, "k_grout"), storage}};
  section.films[0] = leg / 2;
  section.ground_conductivity = number(row, "k_ground");
  return section;
}

model::Pipe ring(const TableRow& row, const std::string& which) {
  const double outer = number(row, "r_" + which + "_o"), inner = number(row, "r_" + which + "_i");
  return {"", 2 * outer, outer - inner, number(row, "k_" + which), storage, 0};
}

SectionOfRow coaxial(const TableRow& row) {
  SectionOfRow section;
  section.bore.diameter = 2 * number(row, "r_bore");
  section.bore.loop =
      model::Coaxial{ring(row, "inner"), row.at("loop").ends_with("annulus down") ? model::Coaxial::Down::annulus
                                                                                  : model::Coaxial::Down::inner};
  section.bore.pipe = ring(row, "outer");
  section.bore.grout = {"", {number(row, "k_grout"), storage}};
  section.films = {number(row, "film_pipe"), number(row, "film_inner"), number(row, "film_outer")};
  section.ground_conductivity = 2;
  return section;
}

}  // namespace

std::vector<TableRow> streams_table(const std::string& limit, const std::string& loop) {
  std::vector<TableRow> rows;
  for (const TableRow& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/loop_streams.csv")) {
    if (row.at("limit") == limit && row.at("loop").starts_with(loop)) rows.push_back(row);
  }
  return rows;
}

SectionOfRow section(const TableRow& row) {
  return row.at("loop").starts_with("coaxial") ? coaxial(row) : double_u(row);
}

bore::Network network(const TableRow& row) {
  const SectionOfRow made = section(row);
  const bore::LoopType& type = bore::loop_type(made.bore.loop);
  const auto modes = type.resistances(made.bore, made.ground_conductivity, made.films);
  return type.network(made.bore.loop, modes, type.capacities(made.bore, 4.15e6), 4e4);
}

std::vector<std::size_t> legs(const std::string& loop) {
  if (loop == "coaxial annulus down" || loop == "parallel" || loop == "coaxial inner down") {
    return loop == "coaxial inner down" ? std::vector<std::size_t>{1, 0} : std::vector<std::size_t>{0, 1};
  }
  if (loop == "parallel crossed") return {0, 2};
  return loop == "series crossed" ? std::vector<std::size_t>{0, 1, 2, 3} : std::vector<std::size_t>{0, 2, 1, 3};
}

std::string describe(const TableRow& row) {
  return fmt::format("section {}, {} m, {} W/K", row.at("section"), row.at("length"), row.at("heat_rate"));
}

}  // namespace stillground::validation
