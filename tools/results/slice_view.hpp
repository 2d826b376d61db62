#pragma once

#include <string>
#include <vector>

#include "tools/present/ground_map.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/eft_view.hpp"
#include "tools/results/slice.hpp"

/// How a cut through the ground is said, drawn and written.
namespace stillground::results {

/// "at 60.0 m depth", "from (0.0, 5.0) to (30.0, 5.0) m".
std::string cut_text(const Cut& cut, UnitSystem system);

/// "2052-07-01 00:00".
std::string instant_text(const record::Header& header, double time);

/// Every node: its place, temperature and change.
present::Table slice_table(const Slice& slice);

std::string slice_text(const Source& source, const record::Header& header, const Slice& slice, UnitSystem system);
present::Json slice_json(const Source& source, const record::Header& header, const Slice& slice);

/// The figures that are drawn, [y][x]: temperatures, or changes, in the units of `system`.
std::vector<double> map_values(const Slice& slice, bool rise, UnitSystem system);

/// The map without its values: bores, plot, levels (of `values`), words.
present::GroundMap slice_map(const Source& source, const record::Header& header, const Slice& slice, bool rise,
                             const std::vector<double>& values, const outputs::Drawing& drawing);

}  // namespace stillground::results
