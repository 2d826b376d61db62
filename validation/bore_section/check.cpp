// Source: validation/reference_solutions/bore_section.edp (finite elements in the plane, FreeFem++ 4.11, a
// general-purpose program)
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "validation/bore_section/compare.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;
using validation::Claim;
using validation::compare;
using validation::compare_fluid;
using validation::compare_parallel;
using validation::compare_section;
using validation::heat;
using validation::Limits;
using validation::number;
using validation::Rows;
using validation::times;

namespace {

constexpr double allowed = 0.1;  // [K] at 50 W/m

/// Means over the hours 0-1, 1-2 and over 2-4, 4-8, 8-16, 16-24 h from the reference solution's means since the row
/// before.
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
  limits.known["double with conductive grout and legs at the wall, grout and pipe walls [K]"] = {0.2, late};
  return limits;
}

/// `early`: bound of the fluid before half an hour [K].
Limits limits_of_odd_mode(double early) {
  Limits limits;
  limits.allowed = 0.5;
  limits.early = {early, "one node for each side's grout; at ten times the heat that occurs"};
  return limits;
}

validation::Plot picture(const std::string& title) {
  return {title, "hours since the step", "rise of the fluid at 50 W/m [K]", true, false, {}};
}

/// The inner pipe's wall has no node of its own: half of what it stores belongs to either stream.
void judge_inner_wall(validation::Check& check) {
  auto& claim = check.claim(
      {"section-coaxial-inner",
       "heat from a coaxial loop's inner stream to its annulus is delayed as by the pipe's wall",
       validation::Origin::library,
       "conduction through a ring between two films by the eigenvectors of 400 rings (scipy) and by Laplace's "
       "transform, "
       "within 1e-6 of each other: validation/reference_solutions/coaxial_wall.py and .csv",
       "50 W/m stepped on in the inner stream at rest, annulus held at 0; half of the wall's heat capacity with the "
       "stream; four invented pipes",
       "0.5 K at 50 W/m from 30 min on, as for an odd mode of legs; chosen beforehand"});
  std::map<std::string, Rows> by_case;
  for (const auto& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/coaxial_wall.csv"))
    by_case[row.at("case")].push_back(row);
  validation::Traces traces;
  for (const auto& [name, rows] : by_case) {
    const bore::Network network = validation::inner_stream_network(rows.front());
    std::vector<double> ours;
    for (const double time : times(rows)) {
      const double resistance = network.modes[1].resistance();
      ours.push_back(-heat * resistance * std::expm1(-time / (resistance * network.capacity[1])));
    }
    Limits limits;
    limits.allowed = 0.5;
    const std::string half = "half of a thick wall is too much for the stream; 2 K of the 70 K that 50 W/m need here";
    limits.early = {1.3, half};
    for (const char* time : {"30 min", "1 h", "2 h", "3 h", "4 h"}) {
      limits.known[fmt::format("insulated, {}", time)] = {2.2, half};
    }
    compare_fluid(claim, traces, name, rows, ours, limits);
  }
  claim.plot(traces.on(picture("Coaxial, heat into the inner stream alone")));
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string source =
      "conduction in the plane by FreeFem++ 4.11 (P2, three meshes): validation/reference_solutions/bore_section.edp "
      "and .csv, 1e-4 "
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
  const std::string odd_source =
      source + "; opposite legs with two idle ones on the line between them, which stays at 0 by symmetry";
  const std::string odd_tolerance =
      "0.5 K at 50 W/m from 30 min on, that is 0.05 K at the 5 W/m of a common loop, chosen beforehand as for a single "
      "U";
  auto& alternate =
      check.claim({"section-double-alternate",
                   "heat that the legs of a double U give those beside them is delayed as in the section",
                   validation::Origin::library, odd_source,
                   "+50, -50, +50, -50 W/m in the legs round the axis; the alternate chain of U's in series, "
                   "integrated exactly; U's in parallel, their legs side by side, in one row",
                   odd_tolerance});
  auto& opposite = check.claim({"section-double-opposite",
                                "heat that the legs of a double U give those opposite is delayed as in the section",
                                validation::Origin::library, odd_source,
                                "+50, 0, -50, 0 W/m in the legs round the axis; the opposite chain of U's in series, "
                                "integrated exactly; U's in parallel, their legs opposite, in one row",
                                odd_tolerance});
  auto& coaxial =
      check.claim({"section-coaxial", "the same of a coaxial loop, annulus and inner pipe at one temperature",
                   validation::Origin::library, source, setup + "; rings by the engine's closed forms", tolerance});
  auto& hours =
      check.claim({"section-hours",
                   "what a user gets in the hours after a jump of the load: hourly means at "
                   "the default step of 30 min",
                   validation::Origin::library, source, setup + "; means of the fluid by the engine's stepper",
                   "0.1 K at 50 W/m, as for the section itself"});

  std::map<std::string, std::map<std::string, Rows>> by_case;
  for (const auto& row : reference_solutions::read_table(REFERENCE_SOLUTIONS "/bore_section.csv"))
    by_case[row.at("case")][row.at("mode")].push_back(row);

  const Limits even_limits = limits_of_even_mode(), odd_limits = limits_of_odd_mode(0.75),
               opposite_limits = limits_of_odd_mode(1.2);
  validation::Traces single_traces, odd_traces, four_traces, coaxial_traces, alternate_traces, opposite_traces;
  for (const auto& make : reference_solutions::read_table(REFERENCE_SOLUTIONS "/bore_section_cases.csv")) {
    const validation::Section section = validation::read_section(make);
    const std::string& name = make.at("case");
    Claim& even_claim = section.legs == 1 ? coaxial : section.legs == 2 ? single : four;
    validation::Traces& even_traces = section.legs == 1   ? coaxial_traces
                                      : section.legs == 2 ? single_traces
                                                          : four_traces;
    const Rows& even = by_case.at(name).at("even");

    const auto answers = validation::even_answer(section, heat, times(even));
    std::vector<double> fluid;
    for (const auto& answer : answers) fluid.push_back(answer.fluid);
    compare_fluid(even_claim, even_traces, name, even, fluid, even_limits);
    compare_section(even_claim, name, even, answers, even_limits);

    const auto means = validation::hourly_means(section, heat, 24);
    for (const auto& [hour, reference] : reference_means(even)) {
      const int first_hour = hour <= 2 ? hour : hour == 24 ? 17 : hour / 2 + 1;
      double ours = 0;
      for (int h = first_hour; h <= hour; ++h) ours += means[static_cast<std::size_t>(h - 1)] / (hour - first_hour + 1);
      const std::string at = fmt::format("{}, hours {} to {}", name, first_hour - 1, hour);
      compare(hours, even_limits, at, at, reference, ours);
    }
    if (section.legs == 1) continue;
    const Rows& beside = by_case.at(name).at("odd");
    if (section.legs == 2) {
      compare_fluid(odd, odd_traces, name, beside,
                    validation::odd_answer(validation::network(section), 1, heat, times(beside)), odd_limits);
      continue;
    }
    const Rows& across = by_case.at(name).at("opposite");
    const bore::Network series = validation::series_network(section);
    compare_fluid(alternate, alternate_traces, name, beside, validation::odd_answer(series, 1, heat, times(beside)),
                  odd_limits);
    compare_fluid(opposite, opposite_traces, name, across, validation::odd_answer(series, 2, heat, times(across)),
                  opposite_limits);
    compare_parallel(alternate, name, beside, validation::network(section), odd_limits);
    compare_parallel(opposite, name, across, validation::crossed_network(section), opposite_limits);
  }
  single.plot(single_traces.on(picture("Single U, legs at one temperature")));
  odd.plot(odd_traces.on(picture("Single U, +50 and -50 W/m: the warm leg")));
  four.plot(four_traces.on(picture("Double U, legs at one temperature")));
  alternate.plot(alternate_traces.on(picture("Double U, +50, -50, +50, -50 W/m: a warm leg")));
  opposite.plot(opposite_traces.on(picture("Double U, +50, 0, -50, 0 W/m: the warm leg")));
  coaxial.plot(coaxial_traces.on(picture("Coaxial, all fluid at one temperature")));
  judge_inner_wall(check);
  return check.finish();
}
