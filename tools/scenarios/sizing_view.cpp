#include "tools/scenarios/sizing_view.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/base/hour_span.hpp"
#include "engine/base/temperature.hpp"
#include "engine/job/cautions.hpp"
#include "engine/units/display.hpp"
#include "tools/scenarios/sizing_words.hpp"

namespace stillground::scenarios {

namespace {

present::Json kelvin(double value) {
  return present::quantity(value, "K");
}

present::Json look_json(const Sized& sized, const Look& look) {
  present::Json json;
  json["value"] = present::number(sized.variation.values[look.place]);
  json["units"] = value_units(sized.variation);
  json["margin"] = kelvin(look.failure.empty() ? look.decision.margin : results::unknown);
  if (const std::optional<Binding> binding = binding_of(look, sized.scenario.run.start)) {
    json["limit"] = binding->limit;
    json["eft"] = present::quantity(binding->came_to - zero_celsius, "degC");
    json["hour"] = binding->hour;
    json["month"] = binding->month;
    json["run_year"] = binding->run_year;
  }
  if (look.decision.method == "screening") {
    json["error_month"] = kelvin(look.decision.own_error.month);
    json["error_hour"] = kelvin(look.decision.own_error.hour);
  }
  if (!look.failure.empty()) json["failure"] = look.failure;
  return json;
}

}  // namespace

present::Table looks_table(const Sized& sized) {
  const Variation& variation = sized.variation;
  present::Table table;
  table.columns = {{.name = word_of(sized.what), .units = variation.units, .digits = variation.units.empty() ? 0 : 2}};
  if (!variation.spacings.empty()) table.columns.push_back({"spacing", "m"});
  table.columns.insert(table.columns.end(), {{"method"},
                                             {"margin", "K", "margin", 3},
                                             {"limit", "", "nearest limit"},
                                             {"eft_min", "degC", "least EFT"},
                                             {"eft_max", "degC", "greatest EFT"},
                                             {"length", "m", "to drill", 0},
                                             {"kept", "", "limits"}});
  const auto add = [&](const Look& look, const char* method) {
    auto& row = table.rows.emplace_back();
    const double value = variation.values[look.place];
    if (variation.units.empty()) {
      row.emplace_back(std::lround(value));
    } else {
      row.emplace_back(value);
    }
    if (!variation.spacings.empty()) row.emplace_back(variation.spacings[look.place]);
    const results::Decision& d = look.decision;
    const bool failed = !look.failure.empty();
    row.emplace_back(std::string(method));
    row.emplace_back(d.margin);
    row.emplace_back(d.limit);
    row.emplace_back(d.eft_min - zero_celsius);
    row.emplace_back(d.eft_max - zero_celsius);
    row.emplace_back(failed ? results::unknown : d.length);
    row.emplace_back(std::string(failed ? "cannot be" : results::kept(d) ? "kept" : "broken"));
  };
  for (std::size_t place = 0; place < variation.values.size(); ++place) {
    if (const Look* look = sized.sizing.screened(place)) add(*look, "screening");
    if (const Look* look = sized.sizing.marched(place)) add(*look, "march");
  }
  return table;
}

present::Json sizing_json(const Sized& sized) {
  const Sizing& sizing = sized.sizing;
  const Variation& variation = sized.variation;
  const std::string units = value_units(variation);
  const auto value = [&](std::optional<std::size_t> place) {
    return place ? present::number(variation.values[*place]) : present::Json(nullptr);
  };
  present::Json json;
  json["title"] = sized.scenario.title;
  json["vary"] = word_of(sized.what);
  json["value"] = value(sizing.answer);
  json["units"] = units;
  json["kept"] = sizing.answer.has_value();
  json["shape"] = shape_word(sizing.shape);
  const Look* shown = shown_look(sized);
  json["limit"] = shown ? present::Json(shown->decision.limit) : present::Json(nullptr);
  json["next_smaller"] = value(sizing.below);
  if (sizing.shape == Shape::none && shown) json["missing"] = kelvin(-shown->decision.margin);
  if (!variation.spacings.empty() && sizing.answer) {
    json["spacing"] = present::quantity(variation.spacings[*sizing.answer], "m");
  }
  if (shown) json["length"] = present::quantity(shown->decision.length, "m");
  if (!variation.units.empty()) json["gain"] = present::quantity(sizing.slope, "K m-1");
  if (variation.units.empty()) json["gain"] = present::quantity(sizing.slope, "K");
  const Look* screened = sizing.screened_nearest();
  json["screening"] = screened ? look_json(sized, *screened) : present::Json(nullptr);
  json["march"] = shown ? look_json(sized, *shown) : present::Json(nullptr);
  json["runs"] = {{"screening", sizing.screenings.size()}, {"march", sizing.marches.size()}};
  json["looks"] = present::columns(looks_table(sized));
  json["notes"] = variation.notes;
  return json;
}

program::Notices sizing_notices(const Sized& sized) {
  program::Notices notices;
  if (const Look* look = shown_look(sized)) notices.warnings = look->decision.warnings;
  notices.cautions = job::cautions(sized.scenario);
  return notices;
}

}  // namespace stillground::scenarios
