#include "engine/screen/walls_undisturbed.hpp"

#include <algorithm>
#include <numeric>

#include "engine/response/pieces.hpp"

namespace stillground::screen {

WallsUndisturbed::WallsUndisturbed(const assembly::Assembly& assembly, std::span<const double> parts)
    : assembly_(assembly), layers_(assembly.problem.nz()) {
  for (const std::vector<double>& all : response::mean_over_pieces(assembly.problem, parts)) {
    const auto any = [](double weight) { return weight != 0; };
    const auto first = std::find_if(all.begin(), all.end(), any);
    const auto end = std::find_if(all.rbegin(), all.rend(), any).base();
    weights_.push_back({static_cast<std::size_t>(first - all.begin()), std::vector<double>(first, end)});
  }
}

void WallsUndisturbed::begin_day(long day) {
  if (day == 0) {
    look(day, {today_.midnight_before.values, weights_.size()});
  } else {
    today_.midnight_before = today_.midnight_after;
  }
  look(day + 1, {today_.midnight_after.values, weights_.size()});
}

void WallsUndisturbed::look(long day, std::span<double> pieces) {
  assembly_.problem.undisturbed.at(static_cast<double>(day) * seconds_per_day, layers_);
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    const auto& [first, weights] = weights_[piece];
    pieces[piece] = std::inner_product(weights.begin(), weights.end(), layers_.data() + first, 0.0);
  }
}

}  // namespace stillground::screen
