#include "validation/error_estimate/random_scenario.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <variant>
#include <vector>

#include "engine/field/layout.hpp"
#include "validation/harness/draw.hpp"
#include "validation/harness/random_building.hpp"

namespace stillground::validation {

namespace {

model::Solid solid(Draw& draw) {
  return {draw.between(0.9, 3.5), draw.between(1.6e6, 2.9e6)};
}

model::Ground ground(Draw& draw, double toe) {
  model::Ground ground;
  const int layers = draw.one_of(1, 4);
  std::vector<double> bottoms;
  for (int i = 1; i < layers; ++i) bottoms.push_back(draw.between(2, 1.2 * toe));
  std::sort(bottoms.begin(), bottoms.end());
  double above = 0;
  for (const double bottom : bottoms) {
    if (bottom - above < 1) continue;
    ground.layers.push_back({bottom, "layer", solid(draw)});
    above = bottom;
  }
  ground.layers.push_back({std::numeric_limits<double>::infinity(), "rock", solid(draw)});
  ground.undisturbed = model::SeasonalSurface{draw.between(281, 289),
                                              draw.between(4, 11),
                                              draw.between(10, 40) * seconds_per_day,
                                              draw.between(0.03, 0.09),
                                              0,
                                              0};
  return ground;
}

model::Bore bore(Draw& draw) {
  model::Bore bore;
  bore.top = draw.between(0.5, 2.5);
  bore.depth = draw.between(50, 200);
  bore.diameter = draw.between(0.12, 0.165);
  const bool wide = draw.chance(0.5);
  bore.pipe = {"", wide ? 0.040 : 0.032, wide ? 0.0037 : 0.0029, 0.42, 1.9e6, 0};
  bore.loop =
      model::SingleU{draw.between(bore.pipe.outer_diameter + 0.005, bore.diameter - bore.pipe.outer_diameter - 0.005)};
  bore.grout = {"", {draw.between(0.8, 2.2), draw.between(1.8e6, 3.8e6)}};
  return bore;
}

model::Layout layout(Draw& draw, const model::Bore& bore) {
  const double spacing = draw.between(4, 10);
  switch (draw.one_of(0, 7)) {  // mostly of one group: the finer marches are dear
    case 0:
    case 1:
    case 2:
      return model::Grid{1, 1, spacing};
    case 3:
    case 4:
      return model::Grid{1, 2, spacing};
    case 5:
      return model::Grid{2, 2, spacing};
    case 6:
      return model::Grid{draw.one_of(1, 2), 3, spacing};
    default:  // an odd pair
      return model::Positions{{{0, 0, bore.top, bore.depth, 0},
                               {spacing, draw.between(0, 3), bore.top, bore.depth * draw.between(0.7, 1), 0}}};
  }
}

/// A year of hours: `peak` times a shape between -1 and 1.
std::vector<double> shape(Draw& draw) {
  std::vector<double> hours;
  const int kind = draw.one_of(0, 2);
  const double shift = draw.between(-0.5, 0.3), idle = draw.between(0, 0.4);
  int left = 0;
  double block = 0;
  for (int hour = 0; hour < hours_per_year; ++hour) {
    const double season = -std::cos(2 * std::numbers::pi * hour / hours_per_year) + shift;
    const double day = 0.6 - 0.4 * std::cos(2 * std::numbers::pi * (hour % 24 - 3) / 24);
    if (kind == 0) {
      hours.push_back(draw.chance(idle) ? 0 : draw.between(-1, 1));
    } else if (kind == 1) {
      hours.push_back(std::abs(season) < idle ? 0 : season / 1.5 * day * draw.between(0.8, 1));
    } else {
      if (left-- == 0) {
        left = draw.one_of(2, 16);
        block = draw.chance(idle) ? 0 : season / 1.5 * draw.between(0.5, 1);
      }
      hours.push_back(block);
    }
  }
  return hours;
}

}  // namespace

model::Scenario random_scenario(std::uint64_t seed, int years) {
  Draw draw(seed);
  model::Scenario s;
  s.title = fmt::format("invented, drawn with seed {}", seed);
  s.bore = bore(draw);
  s.ground = ground(draw, s.bore.top + s.bore.depth);
  s.layout = layout(draw, s.bore);
  s.fluid = {draw.pick({model::Antifreeze::propylene_glycol, model::Antifreeze::ethanol}), draw.between(0.2, 0.28),
             model::Fluid::Basis::mass};
  s.flow = {draw.between(0.2e-3, 0.5e-3), model::Flow::Amount::per_bore,
            draw.chance(0.3) ? model::Flow::Runs::always : model::Flow::Runs::with_load};
  const bool building = draw.chance(0.5);
  double metres = 0;
  for (const auto& site : field::sites(s.layout, s.bore.top, s.bore.depth)) metres += site.depth;
  const double peak = draw.between(15, 45) * metres;
  s.loads = random_loads(draw, shape(draw), peak, building);
  if (building) s.heat_pump = random_heat_pump(draw);
  s.run.start = {2027, draw.one_of(1, 12), 1};
  s.run.years = years;
  s.run.step = draw.pick({900.0, 1800.0, 3600.0});
  s.run.refresh = 3600 * draw.pick({6.0, 12.0, 24.0, 72.0, 168.0});
  s.fields = model::RecordFields::none;
  s.file = "invented.yaml";
  return s;
}

std::string in_words(const model::Scenario& s) {
  const auto bores = field::sites(s.layout, s.bore.top, s.bore.depth);
  const auto nearest = field::nearest_distances(bores);
  const std::string apart = nearest.empty() ? "" : fmt::format(" {:.1f} m apart", nearest.front());
  return fmt::format("{} x {:.0f} m{}, {} layers, {}, {}, {:g} min, {:g} h", bores.size(), s.bore.depth, apart,
                     s.ground.layers.size(), s.heat_pump ? "pumps" : "ground load",
                     s.flow.runs == model::Flow::Runs::always ? "always on" : "on and off", s.run.step / 60,
                     s.run.refresh / 3600);
}

}  // namespace stillground::validation
