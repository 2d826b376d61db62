#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "engine/record/frames.hpp"
#include "engine/record/read/result.hpp"
#include "tools/results/plan.hpp"

namespace stillground::results {

/// Yearly means by run-year and what the steady state would be.
struct YearlyGround {
  std::vector<double> block_rise;   ///< [run-year - 1], change of the ground block by the field [K]
  std::vector<double> middle_rise;  ///< of the mid-points between neighbouring bores [K]; empty for a lone bore
  std::vector<double> undisturbed;  ///< of the block's depths without the field [K]
  double final_block = 0;           ///< steady rise under the last run-year's mean heat [K]
  double final_middle = 0;          ///< NaN for a lone bore
};

/// Is the ground drifting? All trends are those of the change that the field makes, so that a warming climate at the
/// surface (it has a line of its own) is not charged to it.
struct Drift {
  YearlyGround yearly;
  std::vector<double>
      block_trends;         ///< [run-year - 1]: of the ten years up to it [K per decade]; NaN in the first year
  double trend = 0;         ///< the last of them
  double middle_trend = 0;  ///< NaN for a lone bore
  double undisturbed_trend = 0;
  std::optional<int> level_from;  ///< run-year
  double share = 0;  ///< of the final change that the last year's mean has reached; NaN where there is none
};

/// Trends, levelling and shares of yearly means. At least one year.
Drift assess(const YearlyGround& yearly);

/// The ground block of a result: where it is on the plan, and its depths. Of bores of mixed depth it reaches from the
/// highest top to the lowest toe.
struct Block {
  WidenedHull plan;
  double top = 0;  ///< [m]
  double toe = 0;  ///< [m]
};

Block block_of(const std::vector<record::BoreRow>& bores);

/// Means over each run-year of a series of instants by the trapezoid rule. `times` [s] rising. A year whose ends were
/// not recorded gives NaN.
std::vector<double> yearly_means(const std::vector<double>& times, const std::vector<double>& values, int years);

/// Reads all that the drift needs. Throws InputError if the result was recorded without fields.
Drift drift_of(const record::read::Result& result);

/// Whether the result holds fields at all.
bool has_fields(const record::read::Result& result);

/// Whether the ground drifts, how fast, how much of it has happened and when it levels off, in one sentence.
std::string verdict(const Drift& drift, UnitSystem system = UnitSystem::si);

}  // namespace stillground::results
