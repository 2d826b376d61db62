#pragma once

#include <string>
#include <variant>
#include <vector>

#include "engine/model/solid.hpp"

namespace stillground::model {

/// One line of the driller's log.
struct Layer {
  double bottom = 0;  ///< depth of its lower face below the surface [m]; infinity for the last
  std::string material;
  Solid solid;
  std::string source{};  ///< where the catalogue's entry has its values from; empty when the scenario gives its own
};

/// A yearly wave of the surface over a geothermal gradient.
struct SeasonalSurface {
  double mean = 0;          ///< yearly mean of the surface [K]
  double swing = 0;         ///< half the yearly range [K]
  double coldest = 0;       ///< time of the yearly minimum, from 1 January 00:00 [s]
  double heat_flow = 0;     ///< geothermal, upward [W/m2]
  double surface_film = 0;  ///< h between surface and air [W/(m2 K)]; 0: the surface has the given temperature itself
  double trend = 0;         ///< linear warming of the surface from the run's start [K/s]
};

/// A temperature measured at a depth.
struct ProfilePoint {
  double depth = 0;        ///< [m]
  double temperature = 0;  ///< [K]
};

/// Temperatures measured down a bore, constant in time; linear between the points and held beyond them.
struct MeasuredProfile {
  std::vector<ProfilePoint> points;  ///< depths rising, at least one
};

/// One temperature for the whole depth, as a thermal response test gives it.
struct MeanOverBore {
  double temperature = 0;  ///< [K]
};

using Undisturbed = std::variant<SeasonalSurface, MeasuredProfile, MeanOverBore>;

struct Ground {
  std::vector<Layer> layers;  ///< from the surface down, bottoms rising, the last one without end
  Undisturbed undisturbed;
};

}  // namespace stillground::model
