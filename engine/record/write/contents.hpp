#pragma once

#include "engine/record/frames.hpp"
#include "engine/record/spool/spool.hpp"
#include "engine/record/write/draft.hpp"

/// The parts of a result file, each written from the frames it comes from.
namespace stillground::record {

/// Grid, layout, groups, single numbers.
void put_header(Draft& draft, const Header& header);
/// The hourly series.
void put_hours(Draft& draft, const Header& header, const std::vector<Hour>& hours);
/// The balances of the run-years.
void put_balances(Draft& draft, const std::vector<YearBalance>& balances);
/// Snapshots, yearly means and the steady state, as many as there are.
void put_fields(Draft& draft, const Spool& spool, const Closing& closing);

/// The file's own attributes. `complete` is 0: the writer makes it 1 when everything else is there.
void put_attributes(const hdf5::File& file, const Header& header, const Closing& closing);

}  // namespace stillground::record
