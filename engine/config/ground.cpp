#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "engine/base/quote.hpp"
#include "engine/config/catalogue.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

/// Thinner layers would only slow the march.
constexpr double thinnest_layer = 0.1;

double heat_capacity(const Section& layer, double conductivity) {
  if (layer.one_of({"heat_capacity", "diffusivity"}) == "heat_capacity") return layer.quantity("heat_capacity");
  const double value = conductivity / layer.quantity("diffusivity");
  if (value < 0.1e6 || value > 10e6) {
    layer.where("diffusivity")
        .refuse(fmt::format("with this conductivity the heat capacity is {:.3g} MJ/(m3 K) (allowed: {} to {})",
                            value / 1e6, layer.row("heat_capacity").least, layer.row("heat_capacity").most));
  }
  return value;
}

double layer_bottom(const Section& layer, double top, bool last) {
  if (last) {
    layer.forbid("to", "the last layer has no end: leave \"to\" out, or add a layer below");
    return std::numeric_limits<double>::infinity();
  }
  if (!layer.has("to")) {
    layer.where("to").refuse("missing: only the last layer has no end (for example \"to: 9 m\")");
  }
  const double bottom = layer.quantity("to");
  if (bottom < top + thinnest_layer * (1 - 1e-9)) {
    layer.where("to").refuse(
        fmt::format("the layer above ends at {:g} m; this one must end at least {:g} m below it", top, thinnest_layer));
  }
  return bottom;
}

model::Layer read_layer(const Section& own, double top, bool last, Context& context) {
  const auto [layer, source] = with_catalogue(own, "ground", context);
  model::Layer result;
  result.bottom = layer_bottom(layer, top, last);
  result.solid.conductivity = layer.quantity("conductivity");
  result.solid.heat_capacity = heat_capacity(layer, result.solid.conductivity);
  const auto material = layer.optional_text("material");
  result.material = material ? *material : own.has("use") ? own.text("use") : "";
  const bool measured = own.has("conductivity") && (own.has("heat_capacity") || own.has("diffusivity"));
  if (!measured) result.source = source;
  return result;
}

std::vector<model::Layer> read_layers(const Section& ground, Context& context) {
  const Node& list = ground.node("layers");
  if (list.items.empty()) ground.where("layers").refuse("no layer is given: at least one is needed");
  std::vector<model::Layer> layers;
  double top = 0;
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const Node& item = list.items[i];
    const Section layer(item, "ground.layers[]", fmt::format("ground.layers[{}]", i + 1), item.place);
    layers.push_back(read_layer(layer, top, i + 1 == list.items.size(), context));
    top = layers.back().bottom;
  }
  return layers;
}

model::SeasonalSurface read_surface(const Section& undisturbed, Context& context) {
  model::SeasonalSurface surface;
  surface.mean = undisturbed.quantity("surface_mean");
  surface.swing = undisturbed.quantity("surface_swing");
  if (surface.swing > 0 || undisturbed.has("coldest_day")) {
    surface.coldest = undisturbed.number("coldest_day") * seconds_per_day;
  }
  surface.heat_flow = undisturbed.quantity("heat_flow");
  surface.surface_film = undisturbed.optional_quantity("surface_film").value_or(0);
  surface.trend = undisturbed.quantity("surface_trend");
  if (!undisturbed.has("heat_flow")) {
    context.warn(undisturbed.where().place,
                 "ground.undisturbed.heat_flow is not given: the ground is computed without geothermal heat");
  }
  return surface;
}

model::MeasuredProfile read_profile(const Section& undisturbed, Context& context) {
  const Csv csv = read_input(undisturbed, "profile", context);
  const Where asked = undisturbed.where("profile");
  const std::size_t depth = csv.need("depth", asked), temperature = csv.need("temperature", asked);
  const units::Conversion to_metre = csv.conversion(depth, units::Dimension::length);
  const units::Conversion to_kelvin = csv.conversion(temperature, units::Dimension::temperature);
  model::MeasuredProfile profile;
  for (std::size_t row = 0; row < csv.rows(); ++row) {
    const model::ProfilePoint point{csv.number(row, depth, to_metre), csv.number(row, temperature, to_kelvin)};
    if (point.depth < 0 || point.depth > 5000) {
      csv.where(row, depth).refuse(quote(csv.cell(row, depth)) + " is out of range (allowed: 0 m to 5000 m)");
    }
    if (!profile.points.empty() && point.depth <= profile.points.back().depth) {
      csv.where(row, depth).refuse("depths must rise from row to row");
    }
    check_range(point.temperature, csv.cell(row, temperature), key("ground.undisturbed.mean_over_bore"),
                csv.where(row, temperature));
    profile.points.push_back(point);
  }
  return profile;
}

model::Undisturbed read_undisturbed(const Section& ground, Context& context) {
  const Section undisturbed = ground.section("undisturbed");
  const std::string kind = undisturbed.one_of({"surface_mean", "profile", "mean_over_bore"});
  if (kind == "surface_mean") return read_surface(undisturbed, context);
  for (const char* leaf : {"surface_swing", "coldest_day", "heat_flow", "surface_film", "surface_trend"}) {
    undisturbed.forbid(leaf, fmt::format("cannot stand beside {}; it belongs to surface_mean", kind));
  }
  if (kind == "profile") return read_profile(undisturbed, context);
  return model::MeanOverBore{undisturbed.quantity("mean_over_bore")};
}

}  // namespace

model::Ground read_ground(const Section& root, Context& context) {
  const Section ground = root.section("ground");
  model::Ground result;
  result.layers = read_layers(ground, context);
  result.undisturbed = read_undisturbed(ground, context);
  return result;
}

}  // namespace stillground::config
