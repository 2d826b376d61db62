#pragma once

#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "engine/program/notices.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/sweep/state.hpp"

namespace stillground::sweep {

/// What is told of a plan's points, whoever computed them and in which order.
struct Told {
  const Points& points;
  const State& state;
  std::vector<std::size_t> ranking;  ///< see ranked()
};

/// One row a point of which there is a record, in the plan's order: the varied keys, what was decided, how.
present::Table summary_table(const Told& told);

/// summary.csv: the table under its plain names, always in SI (degC, K, h, K per decade, m, MWh a year), so that a
/// program finds `eft_min` whatever the plan varies.
std::string summary_csv(const Told& told);

/// The best rows, best first, with the columns that people compare by.
std::string summary_text(const Told& told, UnitSystem system);

present::Json summary_json(const Told& told);

/// The best points' warnings, each under its point, and how many others have; the cautions of all. `all`: every
/// point's.
program::Notices notices_of(const Told& told, bool all);

/// "3, 5-7, 12"
std::string listed(const std::vector<std::size_t>& numbers);

/// How many points there are of each kind, in words: "60 points: 57 screened, 3 marched; 41 keep their limits".
std::string counts_text(const Told& told);

}  // namespace stillground::sweep
