#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <variant>

#include "engine/field/circuits.hpp"
#include "engine/units/display.hpp"
#include "tools/scenarios/plan.hpp"
#include "tools/scenarios/plan_words.hpp"

namespace stillground::scenarios {

namespace {

std::vector<present::Point> corners(const model::Outline& outline) {
  std::vector<present::Point> points;
  for (const auto& corner : outline) points.push_back({corner.x, corner.y});
  return points;
}

/// The depth that most bores have, the greatest of equals [m].
double common_depth(const std::vector<model::BoreSite>& bores) {
  std::map<double, int> counts;
  for (const auto& bore : bores) ++counts[bore.depth];
  const auto fewer = [](const auto& a, const auto& b) { return a.second < b.second; };
  return std::max_element(counts.rbegin(), counts.rend(), fewer)->first;
}

/// "45 m", "147.6 ft": without a zero that says nothing.
std::string short_length(double metres, UnitSystem system) {
  const units::Shown shown = units::shown_in("m", system);
  return fmt::format("{:g} {}", std::round(10 * shown(metres)) / 10, shown.units);
}

/// What may stand beside a bore: its number, with its name, and with a depth that is not most bores' (given as text).
std::vector<std::string> labels_of(std::size_t bore, const std::string& name, const std::string& depth) {
  const std::string number = fmt::format("{}", bore + 1);
  const std::string named = name.empty() || name == number ? number : number + " \u00b7 " + name;
  if (depth.empty()) return {named, number};
  return {named + " \u00b7 " + depth, number + " \u00b7 " + depth, number};
}

/// The instants at which bores begin, rising; the first is the run's start.
std::vector<double> phases_of(const std::vector<model::BoreSite>& bores) {
  std::set<double> instants{0};
  for (const auto& bore : bores) instants.insert(bore.start);
  return {instants.begin(), instants.end()};
}

std::vector<std::string> phase_texts(const assembly::Assembly& assembly, const std::vector<double>& phases) {
  std::vector<std::string> texts;
  for (const double phase : phases) {
    const auto begins = [phase](const model::BoreSite& bore) { return bore.start == phase; };
    const auto count = std::count_if(assembly.bores.begin(), assembly.bores.end(), begins);
    const std::string from = phase > 0 ? date_of(assembly.scenario.run, phase) : "the start";
    texts.push_back(fmt::format("works from {}: {}", from, count_text(static_cast<std::size_t>(count))));
  }
  return texts;
}

/// When bores are shut off: the only date, or the first and the last.
std::string shut_off_text(const assembly::Assembly& assembly) {
  std::set<double> instants;
  for (const auto& bore : assembly.bores) {
    if (std::isfinite(bore.stop)) instants.insert(bore.stop);
  }
  if (instants.empty()) return "";
  const auto date = [&](double seconds) { return date_of(assembly.scenario.run, seconds); };
  if (instants.size() == 1) return "shut off from " + date(*instants.begin());
  return fmt::format("shut off, the first from {}, the last from {}", date(*instants.begin()),
                     date(*instants.rbegin()));
}

std::string setback_text(const model::Land& land, UnitSystem system) {
  double least = land.setback, most = land.setback;
  for (const auto& part : land.keep_clear) {
    least = std::min(least, part.setback);
    most = std::max(most, part.setback);
  }
  const auto length = [system](double metres) { return units::text(metres, "m", 2, system); };
  return fmt::format("setback of {}: no bore's axis belongs within it",
                     least == most ? length(most) : length(least) + " to " + length(most));
}

/// What a layout tells of the site besides its bores.
void add_land(const model::Layout& layout, present::SitePlan& plan) {
  if (std::holds_alternative<model::Fan>(layout)) plan.chamber = present::Point{0, 0};
  const model::Land* land = model::land_of(layout);
  if (land == nullptr) return;
  plan.plot = present::PlanArea{corners(land->outline), land->setback};
  for (const auto& part : land->keep_clear) plan.kept_clear.push_back({corners(part.outline), part.setback});
  plan.setback_text = setback_text(*land, plan.units);
}

}  // namespace

present::SitePlan site_plan(const assembly::Assembly& assembly, const outputs::Drawing& drawing) {
  const model::Scenario& scenario = assembly.scenario;
  present::SitePlan plan;
  plan.id = "plan";
  plan.units = drawing.units;
  plan.footnotes = drawing.footnotes;
  plan.title = scenario.title;
  const std::string sums = sums_sentence(plan_sums(assembly), drawing.units);
  plan.subtitle = {sums};
  plan.description = "The site from above: " + sums;
  const double depth = common_depth(assembly.bores);
  const std::vector<double> phases = phases_of(assembly.bores);
  bool deeper_or_shallower = false;
  for (const auto& bore : assembly.bores) {
    const bool own_depth = bore.depth != depth;
    deeper_or_shallower = deeper_or_shallower || own_depth;
    const auto phase = std::find(phases.begin(), phases.end(), bore.start) - phases.begin();
    plan.bores.push_back(
        {{bore.x, bore.y},
         static_cast<int>(phase),
         std::isfinite(bore.stop),
         labels_of(plan.bores.size(), bore.name, own_depth ? short_length(bore.depth, drawing.units) : "")});
  }
  if (deeper_or_shallower) {
    plan.subtitle.push_back(
        fmt::format("Active length {}, or as written beside the bore.", short_length(depth, drawing.units)));
  }
  plan.phase_texts = phase_texts(assembly, phases);
  plan.shut_off_text = shut_off_text(assembly);
  const field::Upstream upstream = field::in_series(assembly.bores.size(), scenario.flow.in_series);
  for (std::size_t i = 0; i < upstream.size(); ++i) {
    if (upstream[i] != field::no_bore) plan.links.push_back({plan.bores[upstream[i]].at, plan.bores[i].at});
  }
  add_land(scenario.layout, plan);
  return plan;
}

}  // namespace stillground::scenarios
