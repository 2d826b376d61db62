#pragma once

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"
#include "engine/screen/estimate.hpp"

namespace stillground::screen {

/// How far an estimate may lie from a march of the same scenario, by two things looked at:
/// - what stands for the circuits (few modes, layers, pieces of wall; films between nodes): one circuit alone is both
///   marched and screened through its first year (response::lone_circuit), and the largest differences are raised;
/// - what stands for the field (bores at one mean, neighbours by their mean): a part of the largest rise that earlier
///   heat made at the mean wall.
/// How much they are raised, and the part, were settled on sixty fields drawn at random so that what is estimated
/// covers what was found in 59 of them and more, and were then tried on sixty others (validation/screening_random).
record::ScreeningError own_error(const assembly::Assembly& assembly, const Estimate& estimate);

/// The circuit that is looked at, made like `assembly`.
assembly::Assembly lone_circuit(const assembly::Assembly& assembly);

/// The same where how the `lone` circuit's walls answer heat is known.
record::ScreeningError own_error(const assembly::Assembly& assembly, const Estimate& estimate,
                                 const assembly::Assembly& lone, const LayoutAnswers& answers);

}  // namespace stillground::screen
