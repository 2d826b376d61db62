#include <fmt/format.h>

#include <algorithm>

#include "engine/assembly/shown.hpp"
#include "engine/job/warnings_parts.hpp"

namespace stillground::job {

namespace {

constexpr double deep_trench = 2;  // [m]
constexpr double deep_bore = 300;  // below the surface [m]

/// The key that a bore's depth or top comes from: the bore's own section, or the row of a surveyed field.
Place place_of(const model::Scenario& scenario, const char* key, bool as_the_bore) {
  return scenario.place(as_the_bore ? key : "field.positions");
}

}  // namespace

std::vector<Warning> bore_warnings(const assembly::Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  const auto by_top = [](const auto& a, const auto& b) { return a.top < b.top; };
  const auto by_toe = [](const auto& a, const auto& b) { return a.top + a.depth < b.top + b.depth; };
  const auto& trench = *std::max_element(assembly.bores.begin(), assembly.bores.end(), by_top);
  const auto& deepest = *std::max_element(assembly.bores.begin(), assembly.bores.end(), by_toe);
  std::vector<Warning> warnings;
  if (trench.top > deep_trench) {
    warnings.push_back(
        {place_of(scenario, "bore.top", trench.top == scenario.bore.top),
         fmt::format("the header trench is {} deep: it is shored or its walls sloped as local rules "
                     "ask before anyone goes in",
                     assembly::shown(scenario, trench.top, "m", 1)),
         fmt::format("up to {}; many rules ask for it from less", assembly::shown(scenario, deep_trench, "m", 1))});
  }
  const double toe = deepest.top + deepest.depth;
  if (toe > deep_bore) {
    warnings.push_back(
        {place_of(scenario, "bore.depth", deepest.depth == scenario.bore.depth),
         fmt::format("a bore ends {} below the surface: ask for the pipe's pressure rating at the toe "
                     "and for what is known of artesian water and gas",
                     assembly::shown(scenario, toe, "m", 0)),
         fmt::format("usual up to {}; common practice, no source", assembly::shown(scenario, deep_bore, "m", 0))});
  }
  return warnings;
}

}  // namespace stillground::job
