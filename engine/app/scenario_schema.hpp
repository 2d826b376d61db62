#pragma once

#include <string>

namespace stillground::app {

/// What an editor needs to help with a scenario: a JSON Schema (draft 2020-12) of every key, with its help, range,
/// words and what holds without it. Made from the table of keys. It holds the shape of a scenario, not its units, nor
/// which keys exclude each other: that is what `check` is for.
std::string scenario_schema();

}  // namespace stillground::app
