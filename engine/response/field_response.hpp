#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/response/exponentials.hpp"

namespace stillground::response {

/// What a march of the whole layout under constant heat tells.
struct FieldResponse {
  std::vector<Sample> samples;

  /// [sample][z of the run's grid]: the part of the field's heat that a layer takes, all together 1. By reciprocity it
  /// is also the part that the layer's undisturbed temperature has in the field's own: what the fluid tends to where it
  /// carries no heat.
  std::vector<std::vector<double>> shares;
};

/// Marches the whole layout in ground at rest with growing steps under constant heat, all bores fed at one temperature,
/// until the run's end; full flow through resistances that allow for its rests (see duty). The samples are of the mean
/// bore wall (over all metres). On the run's own rings, but on layers that bear steps of weeks: coarser, thin layers of
/// the log joined.
FieldResponse field_response(const assembly::Assembly& assembly);

}  // namespace stillground::response
