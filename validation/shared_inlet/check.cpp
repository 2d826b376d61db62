// Source: Cimmino & Bernier 2014 (segments), with the bores' own fluid, by
// validation/reference_solutions/shared_inlet.py
#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <sstream>

#include "engine/base/calendar.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/isothermal_field.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

using Row = std::map<std::string, std::string>;

double number(const Row& row, const char* name) {
  return std::stod(row.at(name));
}

struct Claims {
  validation::Claim& inlet;
  validation::Claim& shares;
};

/// One field: its inlet at each time, the worst share of its bores.
void compare(const std::string& name, const std::vector<Row>& rows, Claims& claims, validation::Traces& traces) {
  const Row& made = rows.front();
  const int columns = std::stoi(made.at("columns")), lines = std::stoi(made.at("rows"));
  const double spacing = number(made, "spacing"), length = number(made, "length");
  std::vector<model::BoreSite> bores;
  for (int j = 0; j < lines; ++j) {
    for (int i = 0; i < columns; ++i) bores.push_back({spacing * i, spacing * j, 2, length});
  }
  const double count = static_cast<double>(bores.size());
  validation::IsothermalField field({.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.0, 2.0e6}}},
                                     .bores = bores,
                                     .radius = 0.075,
                                     .resistance = 0.1,
                                     .heat = 20 * length * count,
                                     .years = 25,
                                     .heat_rate = number(made, "heat_rate"),
                                     .internal = 1e6});
  std::map<double, std::vector<Row>> at;
  for (const Row& row : rows) at[number(row, "years") * seconds_per_year].push_back(row);
  std::vector<double> times;
  for (const auto& [time, figures] : at) times.push_back(time);
  field.march(times, [&](double time) {
    const std::string when = fmt::format("{}, {:g} years", name, time / seconds_per_year);
    validation::WorstCase worst;
    for (const Row& row : at.at(time)) {
      const std::string& who = row.at("bore");
      if (who == "inlet") {
        claims.inlet.relative(when, number(row, "value"), field.inlet(), 0.003);
        traces.add(name, time / seconds_per_year, number(row, "value"), field.inlet());
        continue;
      }
      const double x = std::stod(who), y = std::stod(who.substr(who.find(':') + 1));
      const auto bore = std::find_if(bores.begin(), bores.end(), [&](const auto& b) { return b.x == x && b.y == y; });
      worst.compare_absolute("bore at " + who, number(row, "value"),
                             count * field.share_of_inlet(static_cast<std::size_t>(bore - bores.begin())));
    }
    worst.row(claims.shares, when, 0.005);
  });
}

/// Fields of circuits in series, by their inlet.
void compare_series(validation::Claim& claim) {
  std::map<std::string, std::vector<Row>> cases;
  for (const Row& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/series_circuits.csv"))
    cases[row.at("case")].push_back(row);
  for (const auto& [name, rows] : cases) {
    const Row& made = rows.front();
    const double length = number(made, "length");
    std::vector<model::BoreSite> bores;
    std::stringstream all(made.at("positions"));
    for (std::string one; std::getline(all, one, ';');)
      bores.push_back({std::stod(one), std::stod(one.substr(one.find(':') + 1)), 2, length});
    validation::IsothermalField field({.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.0, 2.0e6}}},
                                       .bores = bores,
                                       .radius = 0.075,
                                       .resistance = 0.1,
                                       .heat = 20 * length * static_cast<double>(bores.size()),
                                       .years = 25,
                                       .heat_rate = number(made, "heat_rate"),
                                       .internal = 1e6,
                                       .in_series = std::stoi(made.at("in_series"))});
    std::vector<double> times;
    for (const Row& row : rows) times.push_back(number(row, "years") * seconds_per_year);
    std::size_t next = 0;
    field.march(times, [&](double) {
      const Row& row = rows[next++];
      claim.relative(fmt::format("{}, {} years", name, row.at("years")), number(row, "inlet"), field.inlet(), 0.003);
    });
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  const std::string source =
      "Cimmino & Bernier 2014, Int. J. Heat Mass Transfer 70, 641-650 (segments), Claesson & Javed 2011 (line "
      "sources), with R_b and half the fluid's own rise between inlet and wall; "
      "validation/reference_solutions/shared_inlet.csv";
  const std::string setup =
      "fields of 24 to 36 bores, 20 W/m of constant heat, R_b 0.1 K m/W, streams that exchange nothing, k 2 W/(m K), "
      "rho c 2 MJ/(m3 K); the engine's own grid, groups and coupling, steps that grow to a day";
  Claims claims{
      check.claim({"shared-inlet-rise", "larger fields that share their inlet warm as segmented line sources say",
                   validation::Origin::computed, source, "rise of the inlet [K]; " + setup,
                   "0.3 %, as for fields at one fluid temperature; the reference is within 0.04 %"}),
      check.claim(
          {"shared-inlet-parts",
           "bores at corners, edges and in the middle share the heat as R_b and their own fluid's rise make them",
           validation::Origin::computed, source, "a bore's heat over the mean bore's, worst of all kinds; " + setup,
           "0.005 of the mean bore's heat: the 0.5 % of a neighbour's answer"})};
  std::map<std::string, std::vector<Row>> cases;
  for (const Row& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/shared_inlet.csv"))
    cases[row.at("case")].push_back(row);
  validation::Traces traces;
  for (const auto& [name, rows] : cases) compare(name, rows, claims, traces);
  claims.inlet.plot(traces.on({"Rise of the inlet", "years", "rise [K]", true, false, {}}));
  compare_series(
      check.claim({"shared-inlet-series", "circuits of bores one after the other warm as segmented line sources say",
                   validation::Origin::computed,
                   "Cimmino & Bernier 2014 (segments), Claesson & Javed 2011 (line sources), each bore's outlet the "
                   "next one's inlet; "
                   "validation/reference_solutions/series_circuits.csv",
                   "rise of the circuits' inlet [K]; 4 to 8 bores, two or three on a circuit; otherwise as above",
                   "0.3 %, as for fields at one fluid temperature"}));
  return check.finish();
}
