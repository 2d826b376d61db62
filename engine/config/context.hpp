#pragma once

#include <fmt/format.h>

#include <filesystem>
#include <map>
#include <string>

#include "engine/config/tree.hpp"
#include "engine/model/scenario.hpp"
#include "engine/units/display.hpp"

namespace stillground::config {

/// What the readers of a scenario's parts share.
struct Context {
  std::filesystem::path folder;            ///< of the scenario; the files it names are relative to it
  model::Scenario& scenario;               ///< receives inputs, places and warnings
  std::filesystem::path catalogue_folder;  ///< as the reader was told; may be empty
  std::map<std::string, Node> catalogues;  ///< those read so far, by name

  void warn(const Place& place, const std::string& text, const std::string& range = "") {
    scenario.warnings.push_back({place, text, range});
  }

  /// A length [m] to three digits in the reader's units: "0.12 m", "0.394 ft".
  std::string length(double metres) const {
    const units::Shown shown = units::shown_in("m", scenario.units);
    return fmt::format("{:.3g} {}", shown(metres), shown.units);
  }
};

}  // namespace stillground::config
