#pragma once

#include <string>

namespace stillground::app {

/// A scenario to begin with, as text: it can be run as it stands, and shows every key there is. A key that it does not
/// need stands behind a "#", with an example or the value that holds without it. Made from the table of keys.
std::string starting_scenario();

}  // namespace stillground::app
