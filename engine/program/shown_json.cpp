#include "engine/program/shown_json.hpp"

#include <fmt/format.h>

#include <cstdlib>
#include <utility>

#include "engine/units/display.hpp"

namespace stillground::program {

namespace {

using Json = nlohmann::ordered_json;

Json converted(const Json& value, const units::Shown& shown) {
  if (!value.is_number()) return value;
  return std::strtod(fmt::format("{:.10g}", shown(value.get<double>())).c_str(), nullptr);
}

}  // namespace

Json in_system(Json object, UnitSystem system) {
  if (system == UnitSystem::si) return object;
  if (object.is_structured()) {
    for (auto& part : object) part = in_system(std::move(part), system);
  }
  if (!object.is_object() || !object.contains("units") || !object["units"].is_string()) return object;
  const std::string kept = object["units"];
  const units::Shown shown = units::shown_in(kept, system);
  if (shown.units == kept) return object;
  object["units"] = shown.units;
  if (object.contains("value")) object["value"] = converted(object["value"], shown);
  if (!object.contains("values")) return object;
  for (Json& value : object["values"]) value = converted(value, shown);
  return object;
}

}  // namespace stillground::program
