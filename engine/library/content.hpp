#pragma once

#include <stillground/scenario.hpp>

#include "engine/model/scenario.hpp"

namespace stillground {

/// What stands behind the public scenario.
struct Scenario::Content {
  model::Scenario scenario;
};

}  // namespace stillground
