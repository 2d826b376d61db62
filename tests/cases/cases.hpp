#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "engine/model/scenario.hpp"

/// The scenarios of examples/cases and their pinned figures.
namespace stillground::cases {

inline const std::filesystem::path folder = std::filesystem::path(PROJECT_FOLDER) / "examples/cases";

/// Names of all scenarios in the folder, sorted.
std::vector<std::string> scenario_names();

/// A scenario as the folder has it.
model::Scenario read(const std::string& name);

/// What one run-year brought.
struct Year {
  double eft_least = 0, eft_most = 0;         ///< over hours with flow [degC]
  double into_ground = 0, out_of_ground = 0;  ///< sums of the hours of each sign [MWh]
};

struct Figures {
  int bores = 0;
  int groups = 0;
  double to_drill = 0;  ///< [m]
  Year year;            ///< the last one marched
  double residual = 0;  ///< largest balance residual of any year against its turnover (the heat moved either way) [1]
};

/// Marches `years` run-years in memory, whatever the scenario says. `threads` change nothing but the time that it
/// takes.
Figures march(const std::string& name, int years, int threads);

/// A line of expected.csv.
struct Expected {
  int bores = 0;
  int groups = 0;
  double to_drill = 0;
  Year first;  ///< of a march of one year
  Year last;   ///< of the scenario's last year
};

/// expected.csv by the scenario's name. Throws std::runtime_error for a line that does not fit.
std::map<std::string, Expected> read_expected();

/// Writes expected.csv anew.
void write_expected(const std::map<std::string, Expected>& lines);

}  // namespace stillground::cases
