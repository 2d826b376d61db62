#include "engine/job/cautions.hpp"

#include <algorithm>
#include <string>
#include <variant>

#include "engine/base/temperature.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::job {

namespace {

constexpr double deep_bore = 150;  // of usual rigs and pipe: 500 ft (common practice, no source) [m]

/// The deepest toe below the surface [m].
double deepest_toe(const model::Scenario& scenario) {
  const auto* positions = std::get_if<model::Positions>(&scenario.layout);
  if (!positions) return scenario.bore.top + scenario.bore.depth;
  double toe = 0;
  for (const model::BoreSite& site : positions->sites) toe = std::max(toe, site.top + site.depth);
  return toe;
}

/// Whether a layer takes its values from the catalogue.
bool ground_by_name(const model::Scenario& scenario) {
  const auto& layers = scenario.ground.layers;
  return std::any_of(layers.begin(), layers.end(), [](const model::Layer& layer) { return !layer.source.empty(); });
}

/// Whether fluid below 0 degC is to be expected: by a limit, or by antifreeze where no limit says otherwise.
bool frost_foreseen(const model::Scenario& scenario) {
  bool limited = false;
  for (const model::Limit& limit : scenario.limits) {
    if (limit.side != model::Limit::Side::least) continue;
    if (limit.value < zero_celsius) return true;
    limited = true;
  }
  return !limited && scenario.fluid.base != model::Antifreeze::none;
}

}  // namespace

std::vector<std::string> cautions(const model::Scenario& scenario) {
  std::vector<std::string> texts;
  if (const std::string text = materials::fluid_caution(scenario.fluid.base); !text.empty()) texts.push_back(text);
  if (deepest_toe(scenario) > deep_bore) {
    texts.emplace_back(
        "Deep bores: the water column adds to the pressure in the pipe, and artesian water or gas may be met; ask for "
        "the "
        "pipe's rating at the toe and for local experience.");
  }
  if (scenario.bore.top > 0) {
    texts.emplace_back(
        "Trench: utilities are located before anyone digs; a trench deeper than local rules allow is shored.");
  }
  texts.emplace_back("Pressure: tests are hydrostatic, never with air, and people keep clear of the line.");
  if (frost_foreseen(scenario)) {
    texts.emplace_back(
        "Frost: ground that freezes heaves, squeezes pipes and moves foundations; freezing of the ground is not "
        "computed "
        "here.");
  }
  texts.emplace_back(
      "Clearance to utilities, wells, boundaries and buildings is the owner's to say, and bores wander from their plan "
      "as "
      "they go down.");
  texts.emplace_back(ground_by_name(scenario)
                         ? "Ground: values from a catalogue are no measurement; verify them by a thermal response test."
                         : "Verify the ground's properties by a thermal response test.");
  texts.emplace_back(
      "Follow local codes and licensed practice for drilling, grouting, antifreeze, pressure testing and trench work; "
      "this "
      "informs a design and does not replace one.");
  return texts;
}

}  // namespace stillground::job
