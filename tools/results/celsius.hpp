#pragma once

#include "engine/record/schema.hpp"

namespace stillground::results {

/// People and files read degC; everything else is kelvin.
inline double celsius(double kelvin) {
  return kelvin - record::schema::zero_celsius;
}

}  // namespace stillground::results
