#pragma once

#include <string>

#include "tools/sweep/command.hpp"
#include "tools/sweep/state.hpp"

namespace stillground::sweep {

/// `--list`: how many points there are, each with its number and its values; with a folder, how it stands there.
void list_points(const Plan& plan, const Command& command);

Standing standing_of(const Points& points, std::size_t number);

/// "marched", "screened", "missing", "failed: ...".
std::string standing_text(const Standing& standing);

}  // namespace stillground::sweep
