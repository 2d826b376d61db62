#pragma once

#include <string>
#include <utility>
#include <vector>

#include "engine/program/notices.hpp"
#include "engine/record/frames.hpp"

namespace stillground::results {

/// All that a run warned of, before and after, and the cautions that its file carries.
program::Notices notices_of(const record::Header& header);

/// Of several results: each warning under the name of its layout, each caution once, in the order of their first
/// mention.
program::Notices notices_of(const std::vector<std::pair<std::string, program::Notices>>& layouts);

}  // namespace stillground::results
