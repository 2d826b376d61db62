#pragma once

#include "engine/model/fluid.hpp"

namespace stillground::loop {

/// Part of full flow, 0..1, at a load of `part` of the peak: 0 where the pump stands.
double flow_part(const model::Flow& flow, double part);

/// The smallest part of full flow that runs, 0..1.
double least_part(const model::Flow& flow);

}  // namespace stillground::loop
