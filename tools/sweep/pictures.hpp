#pragma once

#include <string>
#include <utility>
#include <vector>

#include "tools/outputs/outputs.hpp"
#include "tools/present/figure.hpp"
#include "tools/sweep/summary.hpp"

namespace stillground::sweep {

/// A file of the folder and what it shows.
struct Picture {
  std::string file;  ///< "eft_by_bore.depth.svg"
  present::Figure figure;
};

/// Least and greatest EFT against each varied key, and what more margin costs.
std::vector<Picture> pictures_of(const Told& told, const outputs::Drawing& drawing);

/// One of them: all points at each value of a key, and the range that they fill.
present::Figure key_figure(const Told& told, std::size_t axis, const outputs::Drawing& drawing);

/// Cost, or metres without prices, against the margin; the points that none beats are joined and numbered.
present::Figure trade_off_figure(const Told& told, const outputs::Drawing& drawing);

}  // namespace stillground::sweep
