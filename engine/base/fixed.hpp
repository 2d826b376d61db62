#pragma once

#include <string>

namespace stillground {

/// A number with `digits` after the point; never "-0.00"; "-" if it is not finite.
std::string fixed(double value, int digits);

}  // namespace stillground
