#pragma once

#include <string>

namespace stillground::results {

/// What a reader has to know of figures that no march has made; empty for those of a march.
inline std::string method_note(const std::string& method) {
  return method == "screening" ? "A screening estimate, not a march: confirm it by a run with method: march." : "";
}

}  // namespace stillground::results
