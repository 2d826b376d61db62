#pragma once

#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/response/exponentials.hpp"

namespace stillground::response {

/// How a layout's walls answer heat: of each piece (see pieces.hpp), mean over the field's metres of it, what a march
/// of the whole layout under constant heat tells: [piece][instant].
using FieldResponse = std::vector<std::vector<Sample>>;

/// Marches the whole layout in ground at rest with growing steps under constant heat until the run's end. All bores and
/// all depths are fed at one temperature, so that the ground alone decides how they share the heat; full flow's
/// resistances, raised to allow for its rests (operating_fraction). On the run's own rings and the engine's own layers
/// for its log, thin ones joined.
FieldResponse field_response(const assembly::Assembly& assembly, std::span<const double> parts);

}  // namespace stillground::response
