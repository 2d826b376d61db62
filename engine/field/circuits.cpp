#include "engine/field/circuits.hpp"

namespace stillground::field {

Upstream in_series(std::size_t bores, int in_series) {
  Upstream upstream(bores, no_bore);
  for (std::size_t i = 0; i < bores; ++i) {
    if (i % static_cast<std::size_t>(in_series) != 0) upstream[i] = i - 1;
  }
  return upstream;
}

}  // namespace stillground::field
