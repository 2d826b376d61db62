#include "engine/assembly/land.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/field/plot.hpp"
#include "engine/units/display.hpp"

namespace stillground::assembly {

namespace {

constexpr double survey = 1e-3;  ///< to which a surveyed setback is judged [m]

/// Distance from an outline, negative within it [m].
double outside_by(const model::Outline& outline, const model::BoreSite& bore) {
  const model::PlanPoint at{bore.x, bore.y};
  return field::inside(outline, at) ? -field::distance_to(outline, at) : field::distance_to(outline, at);
}

/// The bore that keeps least from a line, of those that keep less than its setback.
struct Nearest {
  std::size_t bore = 0;
  double off = 0;         ///< on the side that is allowed; negative on the other [m]
  std::size_t count = 0;  ///< of bores nearer than the setback
};

template <class Off>
Nearest nearest_of(const std::vector<model::BoreSite>& bores, double setback, Off&& off_of) {
  Nearest nearest;
  for (std::size_t i = 0; i < bores.size(); ++i) {
    const double off = off_of(bores[i]);
    if (off >= setback - survey) continue;
    if (nearest.count == 0 || off < nearest.off) nearest = {i, off, nearest.count};
    ++nearest.count;
  }
  return nearest;
}

/// What is said of it; `beyond`: where it stands if it stands on the wrong side, `line`: what it is too near to.
std::string sentence(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores, const Nearest& nearest,
                     double setback, const std::string& beyond, const std::string& line) {
  const auto length = [&](double metres) { return units::text(metres, "m", 2, scenario.units); };
  const std::string& name = bores[nearest.bore].name;
  std::string text = fmt::format("bore {}{} stands ", nearest.bore + 1, name.empty() ? "" : " (" + name + ")");
  text += nearest.off < 0
              ? length(-nearest.off) + " " + beyond
              : fmt::format("{} from {}, nearer than its setback of {}", length(nearest.off), line, length(setback));
  if (nearest.count > 1) {
    text += fmt::format("; {} more stand{} too near as well", nearest.count - 1, nearest.count == 2 ? "s" : "");
  }
  return text;
}

}  // namespace

std::vector<Warning> land_warnings(const model::Scenario& scenario) {
  const auto* positions = std::get_if<model::Positions>(&scenario.layout);
  if (positions == nullptr || !positions->land) return {};
  const model::Land& land = *positions->land;
  const std::vector<model::BoreSite>& bores = positions->sites;
  const auto outside = [&](const model::BoreSite& bore) { return outside_by(land.outline, bore) > survey; };
  if (std::all_of(bores.begin(), bores.end(), outside)) {
    throw InputError(scenario.place("field.plot"), "field.plot",
                     "no bore of field.positions stands within the outline; are both measured from one origin?");
  }
  std::vector<Warning> warnings;
  const auto judge = [&](double setback, const std::string& beyond, const std::string& line, auto off_of) {
    const Nearest nearest = nearest_of(bores, setback, off_of);
    if (nearest.count == 0) return;
    warnings.push_back(
        {scenario.place("field.positions"), sentence(scenario, bores, nearest, setback, beyond, line), ""});
  };
  judge(land.setback, "outside the plot's outline", "the plot's outline",
        [&](const model::BoreSite& bore) { return -outside_by(land.outline, bore); });
  for (std::size_t i = 0; i < land.keep_clear.size(); ++i) {
    const model::KeepClear& part = land.keep_clear[i];
    const std::string name = fmt::format("field.plot.keep_clear[{}]", i + 1);
    judge(part.setback, "inside " + name, name,
          [&](const model::BoreSite& bore) { return outside_by(part.outline, bore); });
  }
  return warnings;
}

}  // namespace stillground::assembly
