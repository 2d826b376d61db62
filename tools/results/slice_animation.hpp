#pragma once

#include <string>

#include "tools/results/slice_view.hpp"

namespace stillground::results {

/// A page of its own with one map for the start and one for each run-year's end, on common levels; a slider that the
/// keyboard moves too goes through the years. Throws InputError without fields.
std::string slice_animation(const Source& source, const record::read::Result& result, const Cut& cut, bool rise,
                            const outputs::Drawing& drawing, const program::Notices& notices);

}  // namespace stillground::results
