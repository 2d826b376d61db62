#pragma once

#include <string>
#include <vector>

namespace stillground::program {

/// What limits the figures that a verb shows.
struct Notices {
  std::vector<std::string> warnings;  ///< of the scenario, the assembly and the run
  std::vector<std::string> cautions;  ///< what whoever builds it must mind
};

/// What a terminal shows below the figures: the warnings, or that there are none, then the cautions. Lines of at most
/// 100 columns; starts with an empty line.
std::string footer(const Notices& notices);

/// What a picture says of them, a line each: the only warning, or how many there are; the first caution and where the
/// others are.
std::vector<std::string> footnotes(const Notices& notices);

}  // namespace stillground::program
