#pragma once

#include <map>
#include <string>
#include <vector>

#include "validation/bore_section/section.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"

namespace stillground::validation {

inline constexpr double heat = 50;  // [W/m]

/// Rows of the reference solution's table: one case in one mode.
using Rows = std::vector<std::map<std::string, std::string>>;

inline double number(const std::map<std::string, std::string>& row, const std::string& name) {
  return std::stod(row.at(name));
}

std::vector<double> times(const Rows& rows);

/// What a mode may miss, and what is known to miss more.
struct Limits {
  double allowed = 0;  // [K] from half an hour on
  KnownMiss early;     // the fluid before
  std::map<std::string, KnownMiss> known;
};

/// One comparison, known to miss or not.
void compare(Claim& claim, const Limits& limits, const std::string& name, const std::string& at, double reference,
             double ours);

/// Fluid temperatures in one case: row by row from half an hour on, the largest miss before as one row.
void compare_fluid(Claim& claim, Traces& traces, const std::string& name, const Rows& rows,
                   const std::vector<double>& ours, const Limits& limits);

/// The rest of the section in the even mode: the wall, the grout, the heat through the wall.
void compare_section(Claim& claim, const std::string& name, const Rows& rows, const std::vector<SectionAnswer>& ours,
                     const Limits& limits);

/// A double U in parallel, two legs to a stream, by its largest miss from half an hour on.
void compare_parallel(Claim& claim, const std::string& name, const Rows& rows, const bore::Network& network,
                      const Limits& limits);

}  // namespace stillground::validation
