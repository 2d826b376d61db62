#pragma once

#include <string>

#include "engine/base/errors.hpp"

namespace stillground {

/// What an error about a value of the input names: where it stands and the key it was given for.
struct Where {
  Place place;
  std::string key;  ///< dotted path ("bore.depth"), a column's name, or empty

  /// Throws the InputError that says so.
  [[noreturn]] void refuse(const std::string& text) const { throw InputError(place, key, text); }
};

}  // namespace stillground
