#include "validation/bore_section/compare.hpp"

#include <fmt/format.h>

#include <cmath>

namespace stillground::validation {

namespace {

constexpr double half_hour = 1800;

std::string when(double seconds) {
  return seconds < 3600 ? fmt::format("{:g} min", seconds / 60) : fmt::format("{:g} h", seconds / 3600);
}

/// The largest |ours - reference| of some rows.
struct Largest {
  double reference = 0;
  double ours = 0;
  double time = 0;

  void see(double at, double expected, double found) {
    if (!(std::abs(found - expected) <= std::abs(ours - reference))) *this = {expected, found, at};
  }
};

}  // namespace

std::vector<double> times(const Rows& rows) {
  std::vector<double> result;
  for (const auto& row : rows) result.push_back(number(row, "time"));
  return result;
}

void compare(Claim& claim, const Limits& limits, const std::string& name, const std::string& at, double reference,
             double ours) {
  if (const auto known = limits.known.find(name); known != limits.known.end()) {
    claim.known_absolute_miss(at, reference, ours, limits.allowed, known->second.bound, known->second.reason);
  } else {
    claim.absolute(at, reference, ours, limits.allowed);
  }
}

void compare_fluid(Claim& claim, Traces& traces, const std::string& name, const Rows& rows,
                   const std::vector<double>& ours, const Limits& limits) {
  Largest early;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double time = number(rows[i], "time"), reference = heat * number(rows[i], "fluid");
    traces.add(name, time / 3600, reference, ours[i]);
    if (time < half_hour) {
      early.see(time, reference, ours[i]);
      continue;
    }
    const std::string at = fmt::format("{}, {}", name, when(time));
    compare(claim, limits, at, at, reference, ours[i]);
  }
  const std::string at = fmt::format("{}, worst before 30 min ({})", name, when(early.time));
  if (std::abs(early.ours - early.reference) <= limits.allowed) {
    claim.absolute(at, early.reference, early.ours, limits.allowed);
  } else {
    claim.known_absolute_miss(at, early.reference, early.ours, limits.allowed, limits.early.bound, limits.early.reason);
  }
}

void compare_section(Claim& claim, const std::string& name, const Rows& rows, const std::vector<SectionAnswer>& ours,
                     const Limits& limits) {
  Largest wall, filling, through;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double time = number(rows[i], "time");
    if (time < half_hour) continue;
    wall.see(time, heat * number(rows[i], "wall"), ours[i].wall);
    const double mean =
        ours[i].grout_weight * number(rows[i], "grout") + (1 - ours[i].grout_weight) * number(rows[i], "pipe");
    filling.see(time, heat * mean, ours[i].filling);
    through.see(time, heat * number(rows[i], "heat"), ours[i].heat);
  }
  const auto worst = [&](const char* what, const Largest& one, const Limits& within) {
    const std::string which = fmt::format("{}, {}", name, what);
    compare(claim, within, which, fmt::format("{}, worst from 30 min ({})", which, when(one.time)), one.reference,
            one.ours);
  };
  worst("mean wall [K]", wall, limits);
  worst("grout and pipe walls [K]", filling, limits);
  Limits heat_limits;
  heat_limits.allowed = 0.05 * heat;
  worst("heat through the wall [W/m]", through, heat_limits);
}

void compare_parallel(Claim& claim, const std::string& name, const Rows& rows, const bore::Network& network,
                      const Limits& limits) {
  const auto ours = odd_answer(network, 1, 2 * heat, times(rows));
  Largest worst;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double time = number(rows[i], "time");
    if (time >= half_hour) worst.see(time, heat * number(rows[i], "fluid"), ours[i]);
  }
  const std::string which = name + ", in parallel";
  compare(claim, limits, which, fmt::format("{}, worst from 30 min ({})", which, when(worst.time)), worst.reference,
          worst.ours);
}

}  // namespace stillground::validation
