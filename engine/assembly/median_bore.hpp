#pragma once

#include <vector>

#include "engine/model/field.hpp"

namespace stillground::assembly {

/// The bore of median depth (of equal depths the one of median top): it stands for a field where one bore must.
const model::BoreSite& median_bore(const std::vector<model::BoreSite>& bores);

}  // namespace stillground::assembly
