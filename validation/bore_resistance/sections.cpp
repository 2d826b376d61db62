#include "validation/bore_resistance/sections.hpp"

#include <fmt/format.h>

namespace stillground::validation {

bore::BoreSection single_u(const TableRow& row) {
  const double x = number(row, "spacing") / 2;
  const double radius = number(row, "r_pipe"), resistance = number(row, "R_pipe");
  return {number(row, "r_bore"),
          number(row, "k_grout"),
          number(row, "k_ground"),
          {{x, 0, radius, resistance}, {-x, 0, radius, resistance}}};
}

bore::BoreSection double_u(const TableRow& row) {
  const double c = number(row, "pipe_circle");
  const double radius = number(row, "r_pipe"), resistance = number(row, "R_pipe");
  return {number(row, "r_bore"),
          number(row, "k_grout"),
          number(row, "k_ground"),
          {{c, 0, radius, resistance},
           {0, c, radius, resistance},
           {-c, 0, radius, resistance},
           {0, -c, radius, resistance}}};
}

std::string describe(const TableRow& row) {
  const bool four = row.contains("pipe_circle");
  return fmt::format("r_b {:g} mm, pipes {} {:g} mm, grout {}, ground {}, leg {}", 1e3 * number(row, "r_bore"),
                     four ? "on a circle of" : "apart", 1e3 * number(row, four ? "pipe_circle" : "spacing"),
                     row.at("k_grout"), row.at("k_ground"), row.at("R_pipe"));
}

}  // namespace stillground::validation
