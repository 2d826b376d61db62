#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/field/merged_groups.hpp"

namespace stillground::forecast {

/// Hours at whose ends merged groups are predicted and confirmed: each fifth of the run-years 1, 2, 3, 5, 8, 13 ... and
/// of the last, so that both the yearly swing and the years' drift show.
std::vector<long> merging_hours(int years);

/// What neighbours will have done at each group's first bore at the merging hours, mean over the bore [K]: one bore's
/// own march under a watt, superposed over the layout's distances and over the hours' heat, the same in every bore.
/// Bores with cooler surroundings than others will really take less heat and give their neighbours less, so that real
/// sums differ less among the bores than these. `assembly` needs no coupling.
field::Forecast predict_neighbours(const assembly::Assembly& assembly);

/// The scenario's assembly with the groups that it asks for: equal bores, or with `groups: merged` those merged that
/// will have nearly alike neighbours. Throws as assembly::assemble.
assembly::Assembly assemble(model::Scenario scenario,
                            const march::fused::Kernels& kernels = march::fused::best_kernels());

}  // namespace stillground::forecast
