#include "engine/screen/sections_by_bore.hpp"

#include <algorithm>

#include "engine/bore/same_section.hpp"

namespace stillground::screen {

std::shared_ptr<assembly::SolvedSections> SectionsByBore::of(const model::Bore& bore) {
  const std::lock_guard lock(mutex_);
  const auto same = [&](const auto& known) { return bore::same_section(known.first, bore); };
  const auto found = std::find_if(known_.begin(), known_.end(), same);
  if (found != known_.end()) return found->second;
  return known_.emplace_back(bore, std::make_shared<assembly::SolvedSections>()).second;
}

}  // namespace stillground::screen
