#pragma once

#include <nlohmann/json.hpp>

#include "engine/base/unit_system.hpp"

namespace stillground::program {

/// The same object with every figure in the units that people of `system` are shown: the numbers under "value" and
/// "values" beside a "units" that units::shown_in knows, to ten significant digits.
nlohmann::ordered_json in_system(nlohmann::ordered_json object, UnitSystem system);

}  // namespace stillground::program
