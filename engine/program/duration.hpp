#pragma once

#include <string>

namespace stillground::program {

/// "under a second", "40 s", "6 min", "3 h 20 min".
std::string duration_text(double seconds);

}  // namespace stillground::program
