#pragma once

#include "engine/bore/section.hpp"

namespace stillground::test {

/// A bore without any symmetry: three pipes of different size, place and resistance (invented).
inline bore::BoreSection three_unequal_pipes() {
  return {0.08, 0.9, 2.6, {{0.035, 0.01, 0.02, 0.05}, {-0.03, 0.03, 0.016, 0.12}, {-0.012, -0.04, 0.025, 0.08}}};
}

}  // namespace stillground::test
