#include <fmt/format.h>

#include <array>
#include <cmath>

#include "validation/harness/worst_case.hpp"
#include "validation/loop_types/claims.hpp"
#include "validation/loop_types/steady.hpp"

namespace stillground::validation {

namespace {

constexpr std::array depths{0.1, 0.25, 0.5, 0.75, 1.0};  // of the bore's length, as the reference solution's

/// A stream at `depth` [m]: linear between the passages from layer to layer, on layers of a metre.
double at(const std::vector<SteadyBore::Passage>& passages, double depth, bool down) {
  std::size_t n = 1;
  while (n + 1 < passages.size() && passages[n].depth < depth) ++n;
  const auto &above = passages[n - 1], &below = passages[n];
  const double part = (depth - above.depth) / (below.depth - above.depth);
  return down ? std::lerp(above.down, below.down, part) : std::lerp(above.up, below.up, part);
}

struct Profile {
  WorstCase worst;
  std::vector<Curve> curves;
};

void compare(const TableRow& row, Profile& profile) {
  const auto bore = marched(row, 1);
  const std::vector<std::size_t> leg_of = legs(row.at("loop"));
  const std::size_t passes = leg_of.size() / 2;
  profile.curves.clear();
  for (std::size_t pass = 0; pass < passes; ++pass) {
    const auto passages = bore->passages(pass);
    for (const bool down : {true, false}) {
      const std::string name = passes > 1 ? fmt::format("{} {}", down ? "down" : "up", pass + 1) : down ? "down" : "up";
      Curve ours{name, {}, false}, reference{"", {}, true};
      for (const auto& passage : passages) {
        ours.points.emplace_back(passage.depth, (down ? passage.down : passage.up) / bore->inlet());
      }
      for (const double part : depths) {
        const std::size_t leg = leg_of[down ? pass : passes + pass];
        const double expected = number(row, fmt::format("leg{}_at_{:g}", leg, part));
        const double depth = part * number(row, "length");
        profile.worst.compare_absolute(fmt::format("{} at {:g} m, {}", name, depth, describe(row)), expected,
                                       at(passages, depth, down) / bore->inlet());
        reference.points.emplace_back(depth, expected);
      }
      profile.curves.push_back(ours);
      profile.curves.push_back(reference);
    }
  }
}

}  // namespace

void judge_profiles(Check& check) {
  auto& claim = check.claim(
      {"loop-profiles", "on its way down and up every stream has the temperature of its legs' equations",
       Origin::library,
       "every leg's own balance, solved by the exponential of a matrix and by collocation (scipy): "
       "validation/reference_solutions/loop_streams.py and .csv",
       "each stream over the inlet's temperature, both above the wall, at 0.1, 0.25, 0.5, 0.75 and all of the depth, "
       "layers of a metre and linear between them; the bores and flows of loop-steady up to 200 m, wall of one "
       "temperature; per "
       "loop the worst of all streams",
       "2e-4 of the inlet's excess over the wall: exchange at the mean of a layer's ends errs below 1e-4 (see "
       "fluid-profile-metres), linear between layers as much again"});
  for (const std::string loop :
       {"parallel", "parallel crossed", "series", "series crossed", "coaxial annulus down", "coaxial inner down"}) {
    Profile profile;
    for (const TableRow& row : streams_table("wall", loop)) {
      if (row.at("loop") != loop || row.at("length") == "300") continue;
      compare(row, profile);  // the last one is drawn: the longest bore with the least flow
    }
    profile.worst.row(claim, loop, 2e-4);
    if (loop.starts_with("parallel")) continue;
    claim.plot({loop + ", 200 m, 800 W/K", "depth below the bore's top [m]", "temperature over the inlet's [-]", false,
                false, profile.curves});
  }
}

}  // namespace stillground::validation
