#pragma once

#include "engine/model/bore.hpp"

namespace stillground::bore {

/// Whether two bores have the same cross-section: diameter, pipes, where they stand, grout. Not their depths, nor what
/// a response test has measured.
bool same_section(const model::Bore& a, const model::Bore& b);

}  // namespace stillground::bore
