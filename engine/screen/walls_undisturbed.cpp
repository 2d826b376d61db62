#include "engine/screen/walls_undisturbed.hpp"

#include <numeric>

#include "engine/response/pieces.hpp"

namespace stillground::screen {

WallsUndisturbed::WallsUndisturbed(const assembly::Assembly& assembly, std::span<const double> parts)
    : assembly_(assembly),
      weights_(response::mean_over_pieces(assembly.problem, parts)),
      layers_(assembly.problem.nz()),
      today_(parts.size()),
      tomorrow_(parts.size()) {}

void WallsUndisturbed::begin_day(long day) {
  if (day == 0) {
    look(day, today_);
  } else {
    today_ = tomorrow_;
  }
  look(day + 1, tomorrow_);
}

void WallsUndisturbed::look(long day, std::vector<double>& pieces) {
  assembly_.problem.undisturbed.at(static_cast<double>(day) * seconds_per_day, layers_);
  for (std::size_t piece = 0; piece < pieces.size(); ++piece)
    pieces[piece] = std::inner_product(layers_.begin(), layers_.end(), weights_[piece].begin(), 0.0);
}

}  // namespace stillground::screen
