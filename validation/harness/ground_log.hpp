#pragma once

#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include "engine/model/ground.hpp"

namespace stillground::validation {

/// "2:1:2.8e+06;end:3:2.2e+06" (bottom : conductivity : heat capacity) as the reference tables write a ground log;
/// the last layer ends nowhere: "end" or "inf".
inline std::vector<model::Layer> layers_from(const std::string& text) {
  std::vector<model::Layer> layers;
  std::stringstream all(text);
  for (std::string one; std::getline(all, one, ';');) {
    std::stringstream parts(one);
    std::string bottom, k, c;
    std::getline(parts, bottom, ':');
    std::getline(parts, k, ':');
    std::getline(parts, c, ':');
    const double depth = bottom == "end" ? std::numeric_limits<double>::infinity() : std::stod(bottom);
    layers.push_back({depth, "", {std::stod(k), std::stod(c)}});
  }
  return layers;
}

}  // namespace stillground::validation
