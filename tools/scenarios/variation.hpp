#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::scenarios {

enum class Varied { depth, spacing, count };

/// What is to be varied, as the command line has it; texts are quantities with units, or counts.
struct VaryRequest {
  std::filesystem::path scenario;
  std::optional<UnitSystem> units;
  Varied what = Varied::depth;
  std::string from, to;        ///< empty: half and twice the scenario's own
  std::string step;            ///< values are whole multiples of it; empty: 0.1 m or half a foot, one bore
  std::string values;          ///< a list, "90 m, 105 m", instead of these
  std::filesystem::path land;  ///< outline of a plot that counts fill instead of the scenario's own layout
  std::string setback;         ///< of that plot
};

/// A rising list of values and the scenario of each.
struct Variation {
  std::string units = {};                                     ///< of the values: "m"; empty: bores
  std::vector<double> values = {};                            ///< [m] or bores, rising
  bool fine = false;                                          ///< neighbours differ by less than decides anything
  std::size_t start = 0;                                      ///< the place nearest to the scenario's own value
  double own = 0;                                             ///< that value
  std::function<model::Scenario(std::size_t)> scenario = {};  ///< of a place; not from two threads at once
  std::vector<std::string> notes = {};                        ///< what changes along, for people
  std::vector<double> spacings = {};                          ///< of a plot's counts [m]
};

/// Reads the scenario and makes the list. Throws InputError for what cannot be varied: a depth that surveyed bores
/// bring themselves, a spacing of one bore, a count of surveyed bores without land; and for a list without values.
Variation variation_of(const VaryRequest& request);

}  // namespace stillground::scenarios
