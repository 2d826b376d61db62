#pragma once

#include "engine/base/temperature.hpp"

namespace stillground::results {

/// People and files read degC; everything else is kelvin.
inline double celsius(double kelvin) {
  return kelvin - zero_celsius;
}

}  // namespace stillground::results
