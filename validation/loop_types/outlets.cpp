#include <fmt/format.h>

#include <cmath>
#include <map>

#include "engine/bore/effective.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/loop_types/claims.hpp"
#include "validation/loop_types/steady.hpp"
#include "validation/reference_solutions/reference_table.hpp"

namespace stillground::validation {

namespace {

const std::vector<std::string> loops = {"parallel",       "parallel crossed",     "series",
                                        "series crossed", "coaxial annulus down", "coaxial inner down"};

/// Rows of one loop alone: "series" is not "series crossed".
std::vector<TableRow> rows_of(const std::string& limit, const std::string& loop) {
  std::vector<TableRow> rows;
  for (const TableRow& row : streams_table(limit, loop)) {
    if (row.at("loop") == loop) rows.push_back(row);
  }
  return rows;
}

const std::string source =
    "every leg's own balance with the full matrix of resistances between the legs, solved by the exponential of a "
    "matrix and a second time by collocation (scipy): validation/reference_solutions/loop_streams.py and .csv";

void judge_march(Check& check) {
  auto& claim = check.claim(
      {"loop-steady", "every loop type marches to the effective resistance and the outlet of its legs' equations",
       Origin::library, source,
       "R_b* [K m/W] and outlet over inlet, both above the wall, of a bore marched to its steady state on the engine's "
       "own layers, networks from the section's geometry; 100 to 300 m, four flows, four sections of a double U "
       "(series: U after U; crossed: a U's own legs opposite each other) and three coaxial ones; per loop the worst",
       "0.3 % of R_b*, as the reference's README asks of a march on 24 layers; 0.001 of the inlet's excess over the "
       "wall, 0.01 K at 10 K, for the outlet"});
  for (const std::string& loop : loops) {
    WorstCase cold, outlet, even;
    for (const TableRow& row : rows_of("wall", loop)) {
      const auto bore = marched(row);
      cold.compare(describe(row), number(row, "resistance"), bore->effective_resistance());
      outlet.compare_absolute(describe(row), number(row, "outlet"), bore->outlet() / bore->inlet());
    }
    for (const TableRow& row : rows_of("heat", loop)) {
      even.compare(describe(row), number(row, "resistance"), marched(row)->effective_resistance());
    }
    cold.row(claim, loop + ", R_b*, wall of one temperature", 0.003);
    even.row(claim, loop + ", R_b*, the same heat at every depth", 0.003);
    outlet.row(claim, loop + ", outlet", 0.001);
  }
}

void judge_closed(Check& check) {
  auto& claim = check.claim(
      {"loop-effective-resistance", "the R_b* that is reported of any loop is that of its legs' equations",
       Origin::library, source,
       "R_b* [K m/W] of the network in closed form, wall of one temperature; the same bores and flows; per loop the "
       "worst",
       "1e-6: the resistances' agreement, from which all else follows exactly"});
  for (const std::string& loop : loops) {
    WorstCase worst;
    for (const TableRow& row : rows_of("wall", loop)) {
      worst.compare(describe(row), number(row, "resistance"),
                    bore::effective_resistance(network(row), number(row, "length"), number(row, "heat_rate")));
    }
    worst.row(claim, loop, 1e-6);
  }
}

void judge_double_in_parallel(Check& check) {
  auto& claim = check.claim(
      {"double-u-eta-coth-eta", "a double U in parallel marches to R_b eta coth(eta) of its own R_b and R_a",
       Origin::computed,
       "Hellstrom 1991, Ground heat storage [from memory]: R_b eta coth(eta), eta = H/(m c sqrt(R_a R_b)); R_b and R_a "
       "= "
       "R_11 - 2 R_12 + R_13 (a U's legs side by side) or R_11 - R_13 (opposite) of "
       "tests/reference/bore_resistance_double.csv, T_down - T_up = R_a q of both downward legs together",
       "R_b* [K m/W] of the bores of loop-steady, wall of one temperature, engine's own layers; worst of each flow",
       "0.3 %, as loop-steady"});
  const auto table = reference_solutions::reference_table("bore_resistance_double.csv");
  for (const std::string loop : {"parallel", "parallel crossed"}) {
    std::map<std::string, WorstCase> worst;
    for (const TableRow& row : rows_of("wall", loop)) {
      const TableRow& of = table.at(std::stoul(row.at("section").substr(7)));
      const double r11 = number(of, "R11"), r12 = number(of, "R12"), r13 = number(of, "R13");
      const double rb = number(of, "Rb_order10"), ra = loop == "parallel" ? r11 - 2 * r12 + r13 : r11 - r13;
      const double eta = number(row, "length") / (number(row, "heat_rate") * std::sqrt(ra * rb));
      worst[fmt::format("{}, {} m, {} W/K", loop, row.at("length"), row.at("heat_rate"))].compare(
          "section " + row.at("section"), rb * eta / std::tanh(eta), marched(row)->effective_resistance());
    }
    for (const auto& [family, cases] : worst) cases.row(claim, family, 0.003);
  }
}

}  // namespace

void judge_outlets(Check& check) {
  judge_march(check);
  judge_closed(check);
  judge_double_in_parallel(check);
}

}  // namespace stillground::validation
