#include "engine/screen/pack.hpp"

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

STILLGROUND_CLONED
double dot(const Pack* a, const Pack* b, std::size_t packs) {
  Wide sum{};
  for (std::size_t p = 0; p < packs; ++p) sum += wide(a[p]) * wide(b[p]);
  // In one order, whatever the instruction set.
  return ((sum[0] + sum[4]) + (sum[2] + sum[6])) + ((sum[1] + sum[5]) + (sum[3] + sum[7]));
}

}  // namespace stillground::screen
