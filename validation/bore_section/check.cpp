// Source: validation/oracle/bore_section.edp (finite elements in the plane, FreeFem++ 4.11, a general-purpose program)
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "validation/bore_section/section.hpp"
#include "validation/oracle/reference_table.hpp"
#include "validation/rig/claim.hpp"
#include "validation/rig/traces.hpp"

using namespace stillground;
using validation::Claim;

namespace {

constexpr double heat = 50;  // [W/m]
constexpr double half_hour = 1800;
constexpr double allowed = 0.1;  // [K] at 50 W/m

using Rows = std::vector<std::map<std::string, std::string>>;

double number(const std::map<std::string, std::string>& row, const std::string& name) {
  return std::stod(row.at(name));
}

std::string when(double seconds) {
  return seconds < 3600 ? fmt::format("{:g} min", seconds / 60) : fmt::format("{:g} h", seconds / 3600);
}

/// The largest |ours - reference| of some rows.
struct Largest {
  double reference = 0;
  double ours = 0;
  double time = 0;

  void see(double at, double expected, double found) {
    if (!(std::abs(found - expected) <= std::abs(ours - reference))) *this = {expected, found, at};
  }
};

/// What a mode may miss, and what is known to miss more.
struct Limits {
  double allowed = 0;           // [K] from half an hour on
  validation::KnownMiss early;  // the fluid before
  std::map<std::string, validation::KnownMiss> known;
};

/// One comparison, known to miss or not.
void compare(Claim& claim, const Limits& limits, const std::string& name, const std::string& at, double reference,
             double ours) {
  if (const auto known = limits.known.find(name); known != limits.known.end()) {
    claim.known_absolute_miss(at, reference, ours, limits.allowed, known->second.bound, known->second.reason);
  } else {
    claim.absolute(at, reference, ours, limits.allowed);
  }
}

/// Fluid temperatures in one case: row by row from half an hour on, the largest miss before as one row.
void compare_fluid(Claim& claim, validation::Traces& traces, const std::string& name, const Rows& rows,
                   const std::vector<double>& ours, const Limits& limits) {
  Largest early;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double time = number(rows[i], "time"), reference = heat * number(rows[i], "fluid");
    traces.add(name, time / 3600, reference, ours[i]);
    if (time < half_hour) {
      early.see(time, reference, ours[i]);
      continue;
    }
    const std::string at = fmt::format("{}, {}", name, when(time));
    compare(claim, limits, at, at, reference, ours[i]);
  }
  const std::string at = fmt::format("{}, worst before 30 min ({})", name, when(early.time));
  if (std::abs(early.ours - early.reference) <= limits.allowed) {
    claim.absolute(at, early.reference, early.ours, limits.allowed);
  } else {
    claim.known_absolute_miss(at, early.reference, early.ours, limits.allowed, limits.early.bound, limits.early.reason);
  }
}

/// The rest of the section in the even mode: the wall, the grout, the heat through the wall.
void compare_section(Claim& claim, const std::string& name, const Rows& rows,
                     const std::vector<validation::SectionAnswer>& ours, const Limits& limits) {
  Largest wall, filling, through;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double time = number(rows[i], "time");
    if (time < half_hour) continue;
    wall.see(time, heat * number(rows[i], "wall"), ours[i].wall);
    const double mean =
        ours[i].grout_weight * number(rows[i], "grout") + (1 - ours[i].grout_weight) * number(rows[i], "pipe");
    filling.see(time, heat * mean, ours[i].filling);
    through.see(time, heat * number(rows[i], "heat"), ours[i].heat);
  }
  const auto worst = [&](const char* what, const Largest& one, const Limits& within) {
    const std::string which = fmt::format("{}, {}", name, what);
    compare(claim, within, which, fmt::format("{}, worst from 30 min ({})", which, when(one.time)), one.reference,
            one.ours);
  };
  worst("mean wall [K]", wall, limits);
  worst("grout and pipe walls [K]", filling, limits);
  Limits heat_limits;
  heat_limits.allowed = 0.05 * heat;
  worst("heat through the wall [W/m]", through, heat_limits);
}

std::vector<double> times(const Rows& rows) {
  std::vector<double> result;
  for (const auto& row : rows) result.push_back(number(row, "time"));
  return result;
}

/// Means over the hours 0-1, 1-2 and over 2-4, 4-8, 8-16, 16-24 h from the oracle's means since the row before.
std::map<int, double> reference_means(const Rows& rows) {
  std::map<int, double> means;
  double first_hour = 0, before = 0;
  for (const auto& row : rows) {
    const double time = number(row, "time"), mean = heat * number(row, "fluid_mean");
    if (time <= 3600) first_hour += mean * (time - before) / 3600;
    if (time == 3600) means[1] = first_hour;
    if (time > 3600 && time <= 86400) means[static_cast<int>(std::lround(time / 3600))] = mean;
    before = time;
  }
  return means;
}

Limits limits_of_even_mode() {
  const std::string late = "a wall of one temperature lets heat out later than one that is warmest at the legs";
  const std::string first = "two nodes cannot carry the grout's first minutes";
  Limits limits;
  limits.allowed = allowed;
  limits.early = {0.25, first};
  limits.known["narrow bore and laminar flow, 30 min"] = {0.15, first};
  limits.known["narrow bore and laminar flow, hours 0 to 1"] = {0.15, first};
  limits.known["narrow bore and laminar flow, grout and pipe walls [K]"] = {0.2, late};
  limits.known["conductive grout and legs at the wall, grout and pipe walls [K]"] = {0.2, late};
  return limits;
}

Limits limits_of_odd_mode() {
  const std::string one = "one node for each half of the grout; at ten times the heat that occurs";
  Limits limits;
  limits.allowed = 0.5;
  limits.early = {1.0, one};
  limits.known["conductive grout and legs at the wall, 30 min"] = {0.75, one};
  return limits;
}

validation::Plot picture(const std::string& title) {
  return {title, "hours since the step", "rise of the fluid at 50 W/m [K]", true, false, {}};
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string source =
      "conduction in the plane by FreeFem++ 4.11 (P2, three meshes): validation/oracle/bore_section.edp and .csv, 1e-4 "
      "of the figure; its layered cylinder meets the Laplace transform (Carslaw & Jaeger 1959) within 1e-5";
  const std::string setup =
      "50 W/m stepped on at rest; multipole resistances and network as a run makes them, a bore so long that its ends "
      "do not tell, steps from 1 s; grout, pipe walls and fluid store";
  const std::string tolerance =
      "0.1 K at 50 W/m from 30 min on, chosen beforehand: below what a user can tell in an hourly EFT; 5 % of the step "
      "for the heat through the wall";
  auto& single = check.claim({"section-single-even",
                              "the bore's own heat capacity delays a step of heat as the "
                              "cross-section of a single U does, legs at one temperature",
                              validation::Origin::library, source, setup, tolerance});
  auto& odd = check.claim({"section-single-odd",
                           "heat that one leg gives the other is delayed as in the cross-section "
                           "of a single U",
                           validation::Origin::library, source,
                           "+50 W/m in one leg and -50 W/m in the other, ten times what a loop with 5 K between its "
                           "ends has; the odd chain of the network, integrated exactly",
                           "0.5 K at 50 W/m from 30 min on, that is 0.05 K at the 5 W/m of a common loop, chosen "
                           "beforehand"});
  auto& four = check.claim(
      {"section-double-even", "the same of a double U, all four legs at one temperature", validation::Origin::library,
       source, setup + "; the network of four legs is made by the check, of the engine's parts", tolerance});
  auto& hours =
      check.claim({"section-hours",
                   "what a user gets in the hours after a jump of the load: hourly means at "
                   "the default step of 30 min",
                   validation::Origin::library, source, setup + "; means of the fluid by the engine's stepper",
                   "0.1 K at 50 W/m, as for the section itself"});

  std::map<std::string, std::map<std::string, Rows>> by_case;
  for (const auto& row : oracle::read_table(ORACLE_FOLDER "/bore_section.csv"))
    by_case[row.at("case")][row.at("mode")].push_back(row);

  const Limits even_limits = limits_of_even_mode(), odd_limits = limits_of_odd_mode();
  validation::Traces single_traces, odd_traces, four_traces;
  for (const auto& make : oracle::read_table(ORACLE_FOLDER "/bore_section_cases.csv")) {
    const validation::Section section = validation::read_section(make);
    const std::string& name = make.at("case");
    const bool is_single = section.legs == 2;
    const Rows& even = by_case.at(name).at("even");

    const auto answers = validation::even_answer(section, heat, times(even));
    std::vector<double> fluid;
    for (const auto& answer : answers) fluid.push_back(answer.fluid);
    compare_fluid(is_single ? single : four, is_single ? single_traces : four_traces, name, even, fluid, even_limits);
    compare_section(is_single ? single : four, name, even, answers, even_limits);

    const auto means = validation::hourly_means(section, heat, 24);
    for (const auto& [hour, reference] : reference_means(even)) {
      const int first_hour = hour <= 2 ? hour : hour == 24 ? 17 : hour / 2 + 1;
      double ours = 0;
      for (int h = first_hour; h <= hour; ++h) ours += means[static_cast<std::size_t>(h - 1)] / (hour - first_hour + 1);
      const std::string at = fmt::format("{}, hours {} to {}", name, first_hour - 1, hour);
      compare(hours, even_limits, at, at, reference, ours);
    }
    if (!is_single) continue;
    const Rows& against = by_case.at(name).at("odd");
    compare_fluid(odd, odd_traces, name, against, validation::odd_answer(section, heat, times(against)), odd_limits);
  }
  single.plot(single_traces.on(picture("Single U, legs at one temperature")));
  odd.plot(odd_traces.on(picture("Single U, +50 and -50 W/m: the warm leg")));
  four.plot(four_traces.on(picture("Double U, legs at one temperature")));
  return check.finish();
}
