#pragma once

#include <optional>
#include <string>
#include <vector>

namespace stillground {

/// The candidate that takes the fewest single-letter changes (insert, delete, replace, swap of neighbours) to reach
/// from `word`, if those are at most a third of the candidate's letters, and at least one is always forgiven. The first
/// of equals. For "did you mean": a word that resembles nothing gets no advice. Distance: Damerau (1964), optimal
/// string alignment.
std::optional<std::string> nearest_word(const std::string& word, const std::vector<std::string>& candidates);

}  // namespace stillground
