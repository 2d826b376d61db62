#pragma once

#include "engine/march/growing_steps.hpp"

namespace stillground::validation {

using march::GrowingSteps;

}  // namespace stillground::validation
