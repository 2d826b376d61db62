#pragma once

#include <functional>
#include <string>
#include <vector>

#include "engine/model/scenario.hpp"

namespace stillground::validation {

/// Months of even heat, twelve of 730 h a year.
inline constexpr int month_hours = 730;

/// The last hour of a month, rises above the undisturbed ground [K].
struct MonthEnd {
  double lft = 0, eft = 0;                       ///< the march of a run
  double lft_reference = 0, eft_reference = 0;   ///< segments
  double flow = 0, flow_reference = 0;           ///< of the whole field [kg/s]
  std::vector<double> heat{}, heat_reference{};  ///< [bore] into the ground [W]
};

/// Parts of the full flow of a bore of weight 1 that flow through each bore in a month.
using FlowParts = std::function<std::vector<double>(std::size_t month)>;

/// Marches a scenario as a run does, and reckons the same field by reference_solutions::SegmentedField with R_b and R_a
/// of a run at each bore's flow and the fluid's temperature. The scenario has positions in ground of one kind that is
/// equally warm everywhere (MeanOverBore); its loads are replaced by `heat` [month] [W].
/// `resistances_of`: whose pipes and grout make R_b and R_a; the scenario itself, or one that says what was measured.
std::vector<MonthEnd> by_months(model::Scenario scenario, const std::vector<double>& heat, const FlowParts& parts,
                                const model::Scenario& resistances_of);

/// Bores and ground for such scenarios: six bores of 100 m at 6 m, single U's, water; `years` long. Invented.
model::Scenario six_bores(int years);

/// Heat of the months of a year [W/m]: drawn in winter, less given back in summer. Invented.
std::vector<double> months_of_years(int years);

}  // namespace stillground::validation
