#include "validation/harness/random_field.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "engine/field/layout.hpp"
#include "validation/harness/draw.hpp"
#include "validation/harness/random_building.hpp"

namespace stillground::validation {

namespace {

model::Solid solid(Draw& draw) {
  return {draw.between(1.0, 3.5), draw.between(1.7e6, 2.8e6)};
}

std::vector<model::Layer> layers(Draw& draw, double toe) {
  std::vector<double> bottoms;
  for (int i = draw.one_of(1, 4); i > 1; --i) bottoms.push_back(draw.between(3, 1.2 * toe));
  std::sort(bottoms.begin(), bottoms.end());
  std::vector<model::Layer> result;
  double above = 0;
  for (const double bottom : bottoms) {
    if (bottom - above < 2) continue;
    result.push_back({bottom, "layer", solid(draw)});
    above = bottom;
  }
  result.push_back({std::numeric_limits<double>::infinity(), "rock", solid(draw)});
  return result;
}

model::Undisturbed undisturbed(Draw& draw, double toe) {
  const double mean = draw.between(281, 289), swing = draw.between(4, 11),
               coldest = draw.between(10, 40) * seconds_per_day, heat_flow = draw.between(0.03, 0.09);
  const double film = draw.between(5, 20), decade = 10 * seconds_per_year;
  switch (draw.one_of(0, 4)) {
    case 0:
      return model::MeanOverBore{mean};
    case 1:
      return model::MeasuredProfile{{{5, mean + draw.between(-1, 1)}, {toe, mean + draw.between(0.5, 5)}}};
    case 2:
      return model::SeasonalSurface{mean, swing, coldest, heat_flow, film, draw.between(0.1, 0.4) / decade};
    default:
      return model::SeasonalSurface{mean, swing, coldest, heat_flow, 0, 0};
  }
}

model::Bore bore(Draw& draw) {
  model::Bore bore;
  bore.top = draw.between(0.5, 2.5);
  bore.depth = draw.between(50, 200);
  bore.diameter = draw.between(0.13, 0.165);
  const bool wide = draw.chance(0.5);
  bore.pipe = {"", wide ? 0.040 : 0.032, wide ? 0.0037 : 0.0029, 0.42, 1.9e6, 0};
  bore.grout = {"", {draw.between(0.8, 2.2), draw.between(1.8e6, 3.8e6)}};
  const double widest = bore.diameter - bore.pipe.outer_diameter - 0.005;
  const double spacing = draw.between(bore.pipe.outer_diameter + 0.005, widest);
  switch (draw.one_of(0, 3)) {
    case 0: {
      // Corners of a square: two of neighbouring legs must not touch.
      const double least = std::sqrt(2.0) * bore.pipe.outer_diameter + 0.002;
      const auto connection =
          draw.chance(0.5) ? model::DoubleU::Connection::parallel : model::DoubleU::Connection::series;
      bore.loop = model::DoubleU{draw.between(least, widest), connection, draw.chance(0.5)};
      break;
    }
    case 1:
      bore.pipe = {"", draw.between(0.110, 0.125), 0.007, 0.42, 1.9e6, 0};
      bore.loop = model::Coaxial{{"", draw.between(0.050, 0.075), 0.005, 0.42, 1.9e6, 0},
                                 draw.chance(0.5) ? model::Coaxial::Down::annulus : model::Coaxial::Down::inner};
      break;
    default:
      bore.loop = model::SingleU{spacing};
  }
  return bore;
}

model::Layout layout(Draw& draw) {
  const double spacing = draw.between(4.5, 10);
  switch (draw.one_of(0, 8)) {
    case 0:
      return model::Grid{draw.one_of(1, 6), draw.one_of(2, 6), spacing};
    case 1:
      return model::Staggered{draw.one_of(2, 4), draw.one_of(2, 5), spacing};
    case 2:
      return model::Line{draw.one_of(1, 12), spacing};
    case 3:
      return model::LShape{draw.one_of(2, 5), draw.one_of(2, 4), spacing};
    case 4:
      return model::UShape{draw.one_of(2, 5), draw.one_of(2, 4), spacing};
    case 5:
      return model::Ring{draw.one_of(3, 12), spacing};
    case 6:
      return model::Fan{draw.one_of(3, 6), draw.one_of(1, 2), spacing, spacing, 2 * std::numbers::pi};
    default: {
      const int n = draw.one_of(2, 4);
      return model::Grid{n, n, spacing};
    }
  }
}

model::Flow flow(Draw& draw, bool coaxial) {
  model::Flow flow;
  const double low = coaxial ? 0.15e-3 : 0.07e-3;
  flow.rate = low * std::pow(0.6e-3 / low, draw.between(0, 1));
  flow.runs = draw.chance(0.3) ? model::Flow::Runs::always : model::Flow::Runs::with_load;
  switch (draw.one_of(0, 3)) {
    case 0:
      flow.varies = model::Flow::Varies::with_load;
      flow.least = draw.between(0.3, 0.6);
      break;
    case 1:
      flow.varies = model::Flow::Varies::in_stages;
      flow.stages = draw.one_of(2, 4);
      break;
    default:
      break;
  }
  return flow;
}

/// A year of hours between -1 and 1.
std::vector<double> shape(Draw& draw) {
  const int kind = draw.one_of(0, 2);
  const double shift = draw.between(-0.4, 0.25), idle = draw.between(0, 0.4);
  std::vector<double> hours;
  int left = 0;
  double block = 0;
  for (int hour = 0; hour < hours_per_year; ++hour) {
    const double season = (-std::cos(2 * std::numbers::pi * hour / hours_per_year) + shift) / (1 + std::abs(shift));
    const double day = 0.6 - 0.4 * std::cos(2 * std::numbers::pi * (hour % 24 - 3) / 24);
    if (kind == 0) {
      hours.push_back(draw.chance(idle) ? 0 : season * draw.between(0.2, 1));
    } else if (kind == 1) {
      hours.push_back(std::abs(season) < idle ? 0 : season * day * draw.between(0.8, 1));
    } else {
      if (left-- == 0) {
        left = draw.one_of(2, 16);
        block = draw.chance(idle) ? 0 : season * draw.between(0.5, 1);
      }
      hours.push_back(block);
    }
  }
  return hours;
}

}  // namespace

model::Scenario random_field(std::uint64_t seed, int years) {
  Draw draw(seed);
  model::Scenario s;
  s.title = fmt::format("invented, drawn with seed {}", seed);
  s.bore = bore(draw);
  const double toe = s.bore.top + s.bore.depth;
  s.ground.layers = layers(draw, toe);
  s.ground.undisturbed = undisturbed(draw, toe);
  s.layout = layout(draw);
  s.fluid = {draw.pick({model::Antifreeze::propylene_glycol, model::Antifreeze::ethanol}), draw.between(0.2, 0.28),
             model::Fluid::Basis::mass};
  s.flow = flow(draw, std::holds_alternative<model::Coaxial>(s.bore.loop));
  const auto sites = field::sites(s.layout, s.bore.top, s.bore.depth);
  const double metres = s.bore.depth * static_cast<double>(sites.size());
  if (sites.size() % 2 == 0 && draw.chance(0.15)) s.flow.in_series = 2;
  const bool building = draw.chance(0.6);
  const double peak = draw.between(15, 40) * metres;
  s.loads = random_loads(draw, shape(draw), peak, building);
  if (building) s.heat_pump = random_heat_pump(draw);
  s.run.start = {2027, draw.one_of(1, 12), 1};
  s.run.years = years;
  s.fields = model::RecordFields::none;
  s.file = "invented.yaml";
  return s;
}

namespace {

struct LayoutName {
  std::string operator()(const model::Grid& grid) const { return fmt::format("grid {} x {}", grid.rows, grid.columns); }
  std::string operator()(const model::Staggered& at) const {
    return fmt::format("staggered {} x {}", at.rows, at.columns);
  }
  std::string operator()(const model::Line& line) const { return fmt::format("line of {}", line.bores); }
  std::string operator()(const model::LShape&) const { return "L"; }
  std::string operator()(const model::UShape&) const { return "U"; }
  std::string operator()(const model::Ring& ring) const { return fmt::format("ring of {}", ring.bores); }
  std::string operator()(const model::Fan&) const { return "fan"; }
  std::string operator()(const model::Plot&) const { return "plot"; }
  std::string operator()(const model::Positions&) const { return "positions"; }
};

struct LoopName {
  std::string operator()(const model::SingleU&) const { return "single U"; }
  std::string operator()(const model::DoubleU& loop) const {
    return loop.connection == model::DoubleU::Connection::series ? "double U in series" : "double U";
  }
  std::string operator()(const model::Coaxial& loop) const {
    return loop.down == model::Coaxial::Down::annulus ? "coaxial, down the annulus" : "coaxial, down the inner pipe";
  }
};

struct UndisturbedName {
  std::string operator()(const model::SeasonalSurface& surface) const {
    return surface.trend != 0 ? "film and trend" : "seasons";
  }
  std::string operator()(const model::MeasuredProfile&) const { return "profile"; }
  std::string operator()(const model::MeanOverBore&) const { return "one temperature"; }
};

}  // namespace

std::string field_in_words(const model::Scenario& s) {
  const char* varies = "";
  if (s.flow.varies == model::Flow::Varies::with_load) varies = ", with the load";
  if (s.flow.varies == model::Flow::Varies::in_stages) varies = ", in stages";
  return fmt::format("{} of {:.0f} m, {}, {}, {:.2f} L/s{}{}{}, {}", std::visit(LayoutName{}, s.layout), s.bore.depth,
                     std::visit(LoopName{}, s.bore.loop), std::visit(UndisturbedName{}, s.ground.undisturbed),
                     s.flow.rate * 1000, s.flow.runs == model::Flow::Runs::always ? " always" : " on and off", varies,
                     s.flow.in_series > 1 ? ", two in series" : "", s.heat_pump ? "heat pumps" : "ground load");
}

}  // namespace stillground::validation
