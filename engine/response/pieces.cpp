#include "engine/response/pieces.hpp"

#include <algorithm>
#include <numeric>

namespace stillground::response {

std::vector<std::vector<double>> metres_of_pieces(const march::Group& group, const ground::Grid& grid,
                                                  std::span<const double> parts) {
  std::vector<double> within(grid.nz(), 0.0);  // metres in each layer
  for (std::size_t k = group.first; k < group.end; ++k) within[k] = group.fraction[k] * grid.height(k);
  const double depth = std::accumulate(within.begin(), within.end(), 0.0);
  std::vector<std::vector<double>> metres(parts.size(), std::vector<double>(grid.nz(), 0.0));
  double from = 0;  // of the layer below the bore's top [m]
  for (std::size_t k = group.first; k < group.end; ++k) {
    const double to = from + within[k];
    double top = 0;
    for (std::size_t piece = 0; piece < parts.size(); ++piece) {
      const double toe = top + parts[piece] * depth;
      metres[piece][k] = std::max(0.0, std::min(to, toe) - std::max(from, top));
      top = toe;
    }
    from = to;
  }
  return metres;
}

std::vector<std::vector<double>> mean_over_pieces(const march::Problem& problem, std::span<const double> parts) {
  std::vector<std::vector<double>> weights(parts.size(), std::vector<double>(problem.nz(), 0.0));
  for (const march::Group& group : problem.groups) {
    const auto metres = metres_of_pieces(group, problem.grid, parts);
    for (std::size_t piece = 0; piece < parts.size(); ++piece) {
      for (std::size_t k = group.first; k < group.end; ++k) weights[piece][k] += group.members * metres[piece][k];
    }
  }
  for (auto& of_piece : weights) {
    const double sum = std::accumulate(of_piece.begin(), of_piece.end(), 0.0);
    for (double& weight : of_piece) weight /= sum;
  }
  return weights;
}

}  // namespace stillground::response
