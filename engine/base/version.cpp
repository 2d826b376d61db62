#include <stillground/version.hpp>

#include "engine/base/build_values.hpp"  // generated from build_values.hpp.in

namespace stillground {

const std::string& version() {
  static const std::string text = build_values::version;
  return text;
}

const std::string& build() {
  static const std::string text = build_values::build;
  return text;
}

}  // namespace stillground
