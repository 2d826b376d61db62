#include "tools/scenarios/variation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "engine/config/placeholders.hpp"
#include "engine/config/read.hpp"
#include "engine/units/quantity.hpp"
#include "tools/scenarios/counts.hpp"
#include "tools/scenarios/variation_parts.hpp"

namespace stillground::scenarios {

namespace {

constexpr std::size_t longest_list = 100000;

[[noreturn]] void refuse(const std::string& option, const std::string& text) {
  throw InputError(Place{}, option, text);
}

double length(const std::string& option, const std::string& text) {
  Where where;
  where.key = option;
  const double value = units::to_si(text, units::Dimension::length, where);
  if (!(value > 0)) where.refuse("\"" + text + "\" is not above zero");
  return value;
}

/// Whole multiples of the step from one length to another.
std::vector<double> multiples(double from, double to, double step) {
  const double first = std::ceil(from / step - 1e-9), last = std::floor(to / step + 1e-9);
  if (last - first > longest_list) refuse("--step", fmt::format("more than {} values", longest_list));
  std::vector<double> values;
  for (double n = first; n <= last; ++n) values.push_back(n * step);
  return values;
}

std::vector<double> lengths(const VaryRequest& request, double own, UnitSystem system) {
  std::vector<double> values;
  if (!request.values.empty()) {
    std::istringstream list(request.values);
    for (std::string one; std::getline(list, one, ',');) values.push_back(length("--values", one));
    std::sort(values.begin(), values.end());
    return values;
  }
  const double usual = system == UnitSystem::us ? 0.3048 / 2 : 0.1;
  const double step = request.step.empty() ? usual : length("--step", request.step);
  const double from = request.from.empty() ? own / 2 : length("--from", request.from);
  const double to = request.to.empty() ? 2 * own : length("--to", request.to);
  return multiples(from, to, step);
}

/// The list of lengths at one key of the scenario.
Variation at_key(const VaryRequest& request, const std::string& path, double own, UnitSystem system) {
  Variation variation{.units = "m", .values = lengths(request, own, system), .own = own};
  variation.fine = request.values.empty() && request.step.empty();
  variation.scenario = [=, values = variation.values](std::size_t place) {
    const std::string text = fmt::format("{:.12g} m", values[place]);
    return config::read_scenario(request.scenario, request.units, {}, {config::plain_override(path, text)});
  };
  return variation;
}

Variation depths(const VaryRequest& request, const model::Scenario& base) {
  Variation variation = at_key(request, "bore.depth", base.bore.depth, base.units);
  const auto* positions = std::get_if<model::Positions>(&base.layout);
  const auto own_depth = [&](const model::BoreSite& site) { return site.depth != base.bore.depth; };
  if (positions && std::any_of(positions->sites.begin(), positions->sites.end(), own_depth)) {
    refuse("--vary depth", "some surveyed bores bring depths of their own, which bore.depth does not change");
  }
  return variation;
}

Variation spacings(const VaryRequest& request, const model::Scenario& base) {
  const std::optional<SpacedShape> shape = spaced_shape(base.layout);
  if (!shape) {
    refuse("--vary spacing", std::holds_alternative<model::Plot>(base.layout)
                                 ? "on a plot of land the spacing decides how many bores there are: vary count"
                                 : "surveyed bores have no spacing to vary");
  }
  if (!(shape->spacing > 0)) refuse("--vary spacing", "a lone bore has no spacing");
  return at_key(request, "field." + shape->key + ".spacing", shape->spacing, base.units);
}

}  // namespace

Variation variation_of(const VaryRequest& request) {
  const model::Scenario base = config::read_scenario(request.scenario, request.units);
  config::refuse_placeholders(base);
  if (base.limits.empty())
    throw InputError(base.place("limits"), "limits", "there is none to keep: nothing to size by");
  if (request.what != Varied::count && !request.land.empty()) refuse("--within", "belongs to --vary count");
  Variation variation = request.what == Varied::depth     ? depths(request, base)
                        : request.what == Varied::spacing ? spacings(request, base)
                                                          : counts(request, base);
  auto& values = variation.values;
  values.erase(std::unique(values.begin(), values.end()), values.end());
  if (values.empty()) refuse("--from", "there is no value between --from and --to in these steps");
  const auto nearer = [&](double a, double b) { return std::abs(a - variation.own) < std::abs(b - variation.own); };
  variation.start = static_cast<std::size_t>(std::min_element(values.begin(), values.end(), nearer) - values.begin());
  if (base.flow.amount == model::Flow::Amount::total && request.what == Varied::count) {
    variation.notes.emplace_back(
        "The flow is given for the whole field: more bores get less each, and may turn laminar (flow.per_bore keeps "
        "it).");
  }
  return variation;
}

}  // namespace stillground::scenarios
