#pragma once

#include <string>
#include <vector>

#include "engine/base/where.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::config {

/// What a starting scenario holds in place of the site's own.
struct Placeholder {
  Where where;
  std::string text;  ///< "13.5 kW is the load of the scenario that ... writes: is it this site's?"
};

/// Those that stand still: the title, the load. They do not keep a scenario from being run.
std::vector<Placeholder> placeholders(const model::Scenario& scenario);

/// Throws InputError at the first of them: for what leaves the house and is built by.
void refuse_placeholders(const model::Scenario& scenario);

}  // namespace stillground::config
